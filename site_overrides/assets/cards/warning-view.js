// What a person should know before work starts on this phone.

import { notice } from "./app.js";
import { el } from "./kit/dom.js";
import { storageWarning } from "./record/preflight.js";
import { broughtBack } from "./record/put-back.js";

/** @import { App } from "./app.js" */

const INSTALL = [
  "Tap Share, the square with the arrow that points up.",
  "Choose Add to Home Screen, then Add.",
  "Close this tab and open the manual by its new sign on the home screen.",
];

/**
 * The browser's word, asked for once.
 *
 * @param {App} app
 */
export function storageWord(app) {
  app.word ??= storageWarning();
  return app.word;
}

/**
 * @param {App} app
 * @returns {Promise<Node[]>} nothing where all is well
 */
export async function warningView(app) {
  const { tab, ...word } = await storageWord(app);
  const warn = lossWords(broughtBack()) || word.warn;
  if (!tab) return warn ? [notice(warn)] : [];
  return [
    el(
      "section",
      { class: "uh-card__first", "aria-labelledby": "uh-install-first" },
      el("h2", { id: "uh-install-first" }, "Put the manual on the home screen first"),
      el("p", {}, "This is a browser tab. This phone clears a tab’s records after a week without use."),
      el("ol", {}, ...INSTALL.map((step) => el("li", {}, step))),
      el(
        "p",
        {},
        "A card begun in this tab stays in it. To bring it along, share its file from here and take it in there.",
      ),
    ),
  ];
}

/**
 * @param {number} entries that the browser had lost
 * @returns {string} "" for none
 */
function lossWords(entries) {
  if (entries === 0) return "";
  const those = entries === 1 ? "One entry is" : `${entries} entries are`;
  return `This phone’s browser had lost its records. ${those} back, from the second copy.`;
}
