// Where everything stands while a draft is written; what it says comes from the view.

import { el } from "../cards/kit/dom.js";

/**
 * @param {HTMLTextAreaElement} text
 * @param {HTMLElement} bar
 * @param {(HTMLElement | null)[]} buttons
 */
export function frame(text, bar, buttons) {
  const heading = el("h2", { tabindex: -1 });
  const file = el("code", {});
  const state = el("p", { class: "uh-desk__state" });
  const spoken = el("p", { class: "uh-unseen", role: "status" });
  const count = el("strong", {}, "?");
  const summary = el("p", { class: "uh-desk__summary" });
  const found = el("div", {});
  const page = el("div", { class: "uh-desk__paper", tabindex: 0, role: "region", "aria-label": "The page as it will be" });
  const [news, other, asked] = [el("div"), el("div"), el("div", { class: "uh-desk__asked" })];
  const undo = el("div", { class: "uh-notice uh-desk__undo", role: "status", hidden: true });
  const write = section("uh-desk__write", "Text", bar, el("label", { class: "uh-unseen", for: text.id }, "Text of the page"), text, state);
  const acts = el("div", { class: "uh-desk__acts" }, ...buttons, asked);
  const findings = section("uh-desk__findings", "Findings", summary, undo, found);
  const paper = section("uh-desk__page", "Page", page);
  const node = el(
    "div",
    { class: "uh-desk" },
    el("p", {}, el("a", { href: "#" }, "All drafts")),
    el("div", { class: "uh-desk__head" }, heading, el("p", {}, file)),
    spoken,
    news,
    other,
    el("div", { class: "uh-desk__halves" }, el("div", {}, write, findings, acts), paper),
    ways({ Text: write, Findings: findings, Page: paper }, count),
  );
  return { node, heading, file, state, spoken, count, summary, found, page, news, other, asked, undo };
}

/**
 * @param {string} name
 * @param {string} heading
 * @param {...(Node | null)} children
 */
function section(name, heading, ...children) {
  return el("section", { class: name }, el("h3", { tabindex: -1 }, heading), ...children);
}

/**
 * On a phone: one tap to each part, at the thumb.
 *
 * @param {Record<string, HTMLElement>} parts
 * @param {HTMLElement} count of findings
 */
function ways(parts, count) {
  const go = (/** @type {HTMLElement} */ part) => {
    part.scrollIntoView();
    part.querySelector("h3")?.focus({ preventScroll: true });
  };
  const buttons = Object.entries(parts).map(([name, part]) => {
    const made = el("button", { type: "button", onclick: () => go(part) }, name);
    if (name === "Findings") made.append(" ", count);
    return made;
  });
  return el("nav", { class: "uh-desk__strip", "aria-label": "Parts of this draft" }, ...buttons);
}
