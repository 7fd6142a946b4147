// The page as the build would make it. What comes in passes an allow-list; nothing in it can run.

import { safeFragment } from "../cards/kit/safe-html.js";
import { ROOT } from "../phone/site.js";

/** @import { Shown } from "./types.js" */

/**
 * Shows the page, keeping how far it was scrolled.
 *
 * @param {HTMLElement} place
 * @param {Shown} shown
 */
export function showPage(place, { html, address }) {
  const { scrollTop } = place;
  const fragment = safeFragment(html, new URL(address, ROOT));
  for (const title of fragment.querySelectorAll("h1")) title.replaceWith(titleOf(title));
  for (const link of fragment.querySelectorAll("a[href]")) {
    // Its own window: the draft stays where it is.
    link.setAttribute("target", "_blank");
    link.setAttribute("rel", "noopener");
  }
  settle(place, fragment);
  place.scrollTop = scrollTop;
}

/**
 * Changes only what is different, so that a keystroke lays out one paragraph and not the whole page.
 *
 * @param {ParentNode & Node} shown
 * @param {ParentNode & Node} wanted
 */
function settle(shown, wanted) {
  const [before, after] = [[...shown.childNodes], [...wanted.childNodes]];
  if (before.length !== after.length) return shown.replaceChildren(...after);
  before.forEach((old, index) => {
    const made = /** @type {ChildNode} */ (after[index]);
    if (old.isEqualNode(made)) return;
    if (old instanceof Element && made instanceof Element && old.cloneNode().isEqualNode(made.cloneNode())) settle(old, made);
    else old.replaceWith(made);
  });
}

/**
 * There is one first-level heading on the page already.
 *
 * @param {Element} title
 */
function titleOf(title) {
  const words = document.createElement("p");
  words.className = "uh-desk__title";
  words.append(...title.childNodes);
  return words;
}
