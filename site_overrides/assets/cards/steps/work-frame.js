// The parts of the working view that stay while the steps go by, so that the focus stays as well.

import { cardName } from "../app.js";
import { el } from "../kit/dom.js";
import { steps } from "../record/fold.js";
import { askedFaults } from "../record/left.js";

/** @import { CardState } from "../types.js" */

const WAYS = [
  ["jobs", "What is left, by procedure"],
  ["fault", "Fault finding"],
  ["findings", "Findings"],
  ["questions", "Questions for the senior"],
  ["sheet", "Sheets to print: job, owner, parts"],
  ["fetch", "What to fetch"],
  ["add", "Add procedures"],
  ["vehicle", "Vehicle"],
  ["share", "Share the card"],
  ["close", "Close the card"],
];

/**
 * @param {CardState} card
 * @param {{tap: () => void, askWho: () => void}} on
 */
export function workFrame(card, on) {
  const left = el("p", { class: "uh-card__left", role: "status" });
  const off = el("p", { class: "uh-card__off", role: "status" });
  const aloud = el("p", { class: "uh-unseen", "aria-live": "polite" });
  const trouble = el("div");
  const news = el("div", { class: "uh-card__news" });
  const list = el("ol", { class: "uh-card__steps" });
  const place = el("div", { class: "uh-card__place" });
  const others = el("div", { class: "uh-card__others" });
  const word = el("span", { class: "uh-tick__word", id: "uh-tick-word" });
  const described = { "aria-describedby": "uh-tick-word" };
  const tick = el("button", { class: "uh-tick", type: "button", ...described, onclick: on.tap });
  const who = el("button", { class: "uh-initials", type: "button", onclick: on.askWho });
  const thumb = el("div", { class: "uh-card__thumb" }, tick, word);
  const acts = el("div", { class: "uh-card__acts" }, others, thumb);
  const name = el("p", { class: "uh-card__name" }, cardName(card));
  const head = el("div", { class: "uh-card__head" }, name, who);
  const { ways, link } = waysOf(card);
  const screen = el("div", { class: "uh-card__screen" }, head, left, off, news, trouble, list, acts);
  const node = el("div", { class: "uh-card__work" }, screen, aloud, ways);
  return { node, left, off, news, aloud, trouble, list, place, others, word, tick, who, acts, link };
}

/**
 * Sets a text only where it differs, so that nothing is read aloud twice.
 *
 * @param {HTMLElement} element
 * @param {string} words
 */
export function setText(element, words) {
  if (element.textContent !== words) element.textContent = words;
}

/** @param {CardState} card */
function waysOf(card) {
  const link = Object.fromEntries(
    WAYS.map(([to, words]) => [to, el("a", { href: `#card/${card.id}/${to}` }, words)]),
  );
  const items = [...Object.values(link), el("a", { href: "#" }, "All cards")].map((one) => el("li", {}, one));
  const ways = el("nav", { "aria-label": "This card" }, el("ul", { class: "uh-contents" }, ...items));
  return { ways, link };
}

/**
 * How many findings there are and how many questions wait, beside the ways to them.
 *
 * @param {Record<string, HTMLElement>} link
 * @param {CardState} card
 */
export function countWays(link, card) {
  const asked = steps(card).filter(({ shape }) => shape === "handed-back").length + askedFaults(card).length;
  setText(link.findings, card.findings.length > 0 ? `Findings: ${card.findings.length}` : "Findings");
  setText(link.questions, asked > 0 ? `Questions for the senior: ${asked} open` : "Questions for the senior");
}
