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
        "Cards do not move over by themselves. Open a card that was begun in this tab, choose Share the card, ",
        "and take the file in on the home screen’s side.",
      ),
    ),
  ];
}
