// What is to be said where the manual's own page is another than when the draft was begun.

import { el } from "../cards/kit/dom.js";

/** @import { Desk } from "./desk.js" */
/** @import { Draft } from "./types.js" */

/**
 * One sentence, or "" where nothing changed.
 *
 * @param {Draft} draft
 * @param {string | undefined} page the manual's page of that file now
 */
export function newsOf({ basis, text }, page) {
  if (page === text) return basis === page ? "" : "The manual has this text now: the draft has done its work.";
  if (basis === null) return page === undefined ? "" : "The manual has a page of this name since this draft was begun.";
  if (page === undefined) return "The manual’s page was taken away since this draft was begun.";
  return page === basis ? "" : "The manual’s page has changed since this draft was begun.";
}

/**
 * @typedef {object} Acts
 * @property {() => void} keep
 * @property {() => void} take
 */

/**
 * @param {Draft} draft
 * @param {string | undefined} page
 * @param {Desk} desk
 * @param {Acts} acts
 */
export function newsNode(draft, page, desk, acts) {
  const words = newsOf(draft, page);
  if (words === "") return null;
  const both = el("div", { class: "uh-desk__both", hidden: true });
  const show = el("button", { class: "uh-button uh-button--plain", type: "button", "aria-expanded": "false" }, "Show both");
  show.addEventListener("click", () => {
    both.hidden = !both.hidden;
    show.setAttribute("aria-expanded", String(!both.hidden));
    if (!both.hidden && page !== undefined) fill(both, draft, page, desk);
  });
  const differs = page !== undefined && page !== draft.text;
  return el(
    "div",
    { class: "uh-notice uh-desk__news", role: "status" },
    el("p", {}, words),
    differs ? show : null,
    el("button", { class: "uh-button uh-button--plain", type: "button", onclick: acts.keep }, differs ? "Keep my text" : "I have seen it"),
    differs ? el("button", { class: "uh-button uh-button--plain", type: "button", onclick: acts.take }, "Take the manual’s text") : null,
    both,
  );
}

/**
 * @param {HTMLElement} both
 * @param {Draft} draft
 * @param {string} page
 * @param {Desk} desk
 */
function fill(both, { basis }, page, desk) {
  const changes = el("pre", { tabindex: 0, "aria-label": "What changed in the manual" }, "Comparing");
  both.replaceChildren(
    ...(basis === null ? [] : [el("p", {}, "What changed in the manual, + new and - gone:"), changes]),
    el("p", {}, "The manual’s page as it is now; your text stands below:"),
    el("pre", { tabindex: 0, "aria-label": "The manual’s page now" }, page),
  );
  if (basis === null) return;
  const tell = (/** @type {string} */ words) => (changes.textContent = words);
  desk.difference(basis, page).then((lines) => tell(lines.join("\n")), (error) => tell(`Not compared: ${error.message}.`));
}
