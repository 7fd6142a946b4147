// The cards on this phone.

import { cardName, notice, timeWords } from "./app.js";
import { el } from "./kit/dom.js";
import { foldCard } from "./record/fold.js";
import { leftInWords } from "./record/left.js";
import { allEvents } from "./record/store.js";

/** @import { App, View } from "./app.js" */
/** @import { CardState } from "./types.js" */

/**
 * @param {App} app
 * @returns {Promise<View>}
 */
export async function listView(app) {
  const cards = foldAll(await allEvents());
  const open = cards.filter((card) => !card.closed);
  const closed = cards.filter((card) => card.closed);
  const empty = el("p", {}, "No cards on this phone yet. Start one when a vehicle comes in.");
  const node = el(
    "div",
    { class: "uh-card__list" },
    app.warning ? notice(app.warning) : null,
    el("p", {}, el("a", { class: "uh-button", href: "#new" }, "Start a card")),
    cards.length === 0 ? empty : null,
    ...group("Open", open),
    ...group("Closed", closed),
  );
  return { node };
}

/**
 * @param {import("./types.js").CardEvent[]} events
 * @returns {CardState[]} the newest first
 */
function foldAll(events) {
  /** @type {Map<string, import("./types.js").CardEvent[]>} */
  const byCard = new Map(events.map(({ card }) => [card, []]));
  for (const event of events) byCard.get(event.card)?.push(event);
  const cards = [...byCard.values()].flatMap((own) => foldCard(own) ?? []);
  return cards.sort((a, b) => (a.started.at < b.started.at ? 1 : -1));
}

/**
 * @param {string} title
 * @param {CardState[]} cards
 */
function group(title, cards) {
  if (cards.length === 0) return [];
  return [el("h2", {}, title), el("ul", { class: "uh-contents" }, ...cards.map(entry))];
}

/** @param {CardState} card */
function entry(card) {
  return el(
    "li",
    {},
    el("a", { href: `#card/${card.id}` }, cardName(card)),
    el("p", {}, card.complaint),
    el("p", { class: "uh-facts" }, `${leftInWords(card)} Started ${timeWords(card.started.at)}.`),
  );
}
