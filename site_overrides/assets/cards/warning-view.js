// What a person should know before work starts on this phone.

import { notice } from "./app.js";
import { el } from "./kit/dom.js";

/** @import { StorageWord } from "./record/preflight.js" */

const INSTALL = [
  "Tap Share, the square with the arrow that points up.",
  "Choose Add to Home Screen, then Add.",
  "Close this tab and open the manual by its new sign on the home screen.",
];

/**
 * @param {Pick<StorageWord, "warn"|"tab">} word
 * @returns {Node[]} nothing where all is well
 */
export function warningView({ warn, tab }) {
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
