// How every card on this phone stands, without reading the events of those that did not change.

import { withDatabase } from "./database.js";
import { foldCard } from "./fold.js";
import { leftInWords } from "./left.js";

/** @import { IDBPDatabase, IDBPIndex } from "../../vendor/idb.js" */
/** @import { CardEvent, CardState } from "../types.js" */
/** @import { Session } from "./session.js" */

/**
 * @typedef {object} Brief
 * @property {string} card
 * @property {string} name of the vehicle and its unit
 * @property {string} complaint
 * @property {string} left what is left, in words
 * @property {string} started ISO 8601
 * @property {boolean} closed
 */

/** A summary holds as long as the card has as many events: they never change and never go.
 * @typedef {{card: string, shape: number, events: number, brief: Brief|null}} Summary */

/** @typedef {IDBPIndex<any, string[], "events", "card">} Index */

/** Raise it whenever a brief says something else than before. */
const SHAPE = 2;

const PAUSE = 700; // ms

/**
 * Every card on this phone, the one begun last first. Cards whose start has not arrived are left out.
 *
 * @returns {Promise<Brief[]>}
 * @throws {import("./trouble.js").StorageTrouble}
 */
export async function cardsInBrief() {
  const { counts, kept } = await withDatabase(readAll);
  const summaries = [];
  for (const [card, events] of counts) {
    const known = kept.get(card);
    const holds = known?.events === events && known.shape === SHAPE;
    summaries.push(holds ? known : await makeAnew(card));
  }
  const briefs = summaries.flatMap(({ brief }) => brief ?? []);
  return briefs.sort(lastBegunFirst);
}

/**
 * @param {Brief} a
 * @param {Brief} b
 */
function lastBegunFirst(a, b) {
  if (a.started !== b.started) return a.started < b.started ? 1 : -1;
  return a.card < b.card ? -1 : 1;
}

/** @param {IDBPDatabase} database */
async function readAll(database) {
  const look = database.transaction(["events", "summaries"]);
  const index = look.objectStore("events").index("card");
  /** @type {[Summary[], number]} */
  const [kept, total] = await Promise.all([look.objectStore("summaries").getAll(), index.count()]);
  const byCard = new Map(kept.map((one) => [one.card, one]));
  const known = await countEach(index, [...byCard.keys()]);
  const sum = [...known.values()].reduce((sum, events) => sum + events, 0);
  // Only where these are not all the events is there a card without a summary: to look for one asks card by card.
  const counts = sum === total ? known : await countEach(index, await everyCard(index));
  return { counts, kept: byCard };
}

/**
 * @param {Index} index
 * @param {string[]} cards
 */
async function countEach(index, cards) {
  const numbers = await Promise.all(cards.map((card) => index.count(card)));
  return new Map(cards.map((card, at) => [card, numbers[at]]));
}

/** @param {Index} index */
async function everyCard(index) {
  /** @type {string[]} */
  const cards = [];
  let cursor = await index.openKeyCursor(null, "nextunique");
  for (; cursor; cursor = await cursor.continue()) cards.push(String(cursor.key));
  return cards;
}

/**
 * @param {string} card
 * @returns {Promise<Summary>}
 */
function makeAnew(card) {
  return withDatabase(async (database) => {
    /** @type {CardEvent[]} */
    const events = await database.getAllFromIndex("events", "card", card);
    return keep(database, { card, shape: SHAPE, events: events.length, brief: briefOf(foldCard(events)) });
  });
}

/** @type {Map<string, {state: CardState|null, timer: ReturnType<typeof setTimeout>}>} */
const soon = new Map();

/**
 * Keeps how an open card stands a moment after that changed: the list need not read its events again.
 *
 * @param {Session} session
 */
export function keepInBrief({ card, events, state }) {
  const known = soon.get(card);
  if (!state || known?.state === state) return;
  clearTimeout(known?.timer);
  const count = events.size; // more may come before it is kept
  const put = () => withDatabase((database) => keep(database, { card, shape: SHAPE, events: count, brief: briefOf(state) }));
  soon.set(card, { state, timer: setTimeout(() => void put().catch(() => {}), PAUSE) });
}

/**
 * @param {IDBPDatabase} database
 * @param {Summary} summary
 */
async function keep(database, summary) {
  // The list is right without it: a full phone only makes it slower.
  await database.put("summaries", summary).catch(() => {});
  return summary;
}

/**
 * @param {CardState|null} card
 * @returns {Brief|null}
 */
export function briefOf(card) {
  if (!card) return null;
  const { id, vehicle, complaint, started, closed } = card;
  const name = `${vehicle.identification} · ${vehicle.family_title}`;
  return { card: id, name, complaint, left: leftInWords(card), started: started.at, closed: closed !== null };
}
