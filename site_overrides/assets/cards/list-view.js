// The cards on this phone.

import { timeWords } from "./app.js";
import { el } from "./kit/dom.js";
import { counted } from "./record/left.js";
import { cardsInBrief } from "./record/summaries.js";
import { exchangeLine } from "./sync/exchange-line.js";
import { warningView } from "./warning-view.js";

/** @import { App, View } from "./app.js" */
/** @import { Brief } from "./record/summaries.js" */

/** More cards than this can be searched. */
const MANY = 10;

/**
 * @param {App} app
 * @returns {Promise<View>}
 */
export async function listView(app) {
  const [cards, warnings] = await Promise.all([app.readOnce("", cardsInBrief), warningView(app)]);
  const lists = el("div");
  const found = el("p", { class: "uh-facts", role: "status" });
  const show = (/** @type {string} */ words) => {
    const fitting = cards.filter((card) => fits(card, words));
    const none = `No card on this phone has “${words.trim()}” in it.`;
    found.textContent = words.trim() === "" ? "" : fitting.length > 0 ? counted(fitting.length, "card") : none;
    lists.replaceChildren(
      ...group("Open", fitting.filter(({ closed }) => !closed)),
      ...group("Closed", fitting.filter(({ closed }) => closed)),
    );
  };
  show("");
  const empty = el("p", {}, "No cards on this phone yet. Start one when a vehicle comes in.");
  const exchange = exchangeLine();
  const plain = { class: "uh-button uh-button--plain", href: "#take-in" };
  const node = el(
    "div",
    { class: "uh-card__list" },
    ...warnings,
    el(
      "p",
      { class: "uh-card__answers" },
      el("a", { class: "uh-button", href: "#new" }, "Start a card"),
      el("a", plain, "Take in a card file"),
    ),
    cards.length === 0 ? empty : null,
    ...(cards.length > MANY ? [searchField(show), found] : []),
    lists,
    exchange.line,
  );
  return { node, leave: exchange.leave };
}

/** @param {(words: string) => void} show */
function searchField(show) {
  const id = "uh-card-search";
  const told = `${id}-help`;
  const input = el("input", { id, type: "search", autocomplete: "off", "aria-describedby": told });
  input.addEventListener("input", () => show(input.value));
  return el(
    "div",
    { class: "uh-field", role: "search" },
    el("label", { for: id }, "Look for a card"),
    input,
    el("p", { class: "uh-field__help", id: told }, "Any words of the vehicle or the complaint."),
  );
}

/**
 * Whether every word stands somewhere in what the list says of a card; case and accents do not matter.
 *
 * @param {Brief} card
 * @param {string} words
 */
function fits({ name, complaint, left }, words) {
  const text = plain(`${name} ${complaint} ${left}`);
  return plain(words).split(/\s+/).every((word) => text.includes(word));
}

/** @param {string} text */
function plain(text) {
  return text.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase();
}

/**
 * @param {string} title
 * @param {Brief[]} cards
 */
function group(title, cards) {
  if (cards.length === 0) return [];
  return [el("h2", {}, title), el("ul", { class: "uh-contents" }, ...cards.map(entry))];
}

/** @param {Brief} card */
function entry({ card, name, complaint, left, started }) {
  return el(
    "li",
    {},
    el("a", { href: `#card/${card}` }, name),
    el("p", {}, complaint),
    el("p", { class: "uh-facts" }, `${left} Started ${timeWords(started)}.`),
  );
}
