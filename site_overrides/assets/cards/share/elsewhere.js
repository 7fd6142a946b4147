// What this phone knows of the places in the devices' chains that other cards take.

import { withDatabase } from "../record/database.js";
import { remember, remembered } from "../record/store.js";
import { gaps, without } from "./chain.js";

/** @import { IDBPDatabase } from "../../vendor/idb.js" */
/** @import { CardEvent } from "../types.js" */
/** @import { Run } from "./chain.js" */

/**
 * Runs of places that other cards' events take: those on this phone, and those another phone told of.
 *
 * @param {string} card
 * @param {CardEvent[]} events all of this card
 * @returns {Promise<Run[]>}
 */
export async function elsewhereOf(card, events) {
  const open = gaps(events);
  const own = await withDatabase(async (database) => {
    const found = await Promise.all(open.map((gap) => runsIn(database, gap)));
    return found.flat();
  });
  const told = await toldOf(card);
  const rest = without(open, own);
  return [...own, ...rest.flatMap((gap) => told.flatMap((run) => overlap(gap, run)))];
}

/**
 * Keeps what another phone told of a card.
 *
 * @param {string} card
 * @param {Run[]} runs
 */
export async function keepTold(card, runs) {
  const known = await toldOf(card);
  const fresh = runs.flatMap((run) => without([run], known));
  if (fresh.length > 0) await remember(nameFor(card), [...known, ...fresh]);
}

/** @param {string} card @returns {Promise<Run[]>} */
async function toldOf(card) {
  const kept = await remembered(nameFor(card));
  return Array.isArray(kept) ? kept : [];
}

/** @param {string} card */
function nameFor(card) {
  return `elsewhere ${card}`;
}

/**
 * @param {IDBPDatabase} database
 * @param {Run} gap
 * @returns {Promise<Run[]>}
 */
async function runsIn(database, { device, from, to }) {
  const range = IDBKeyRange.bound([device, from], [device, to]);
  const index = database.transaction("events").store.index("place");
  if ((await index.count(range)) === to - from + 1) return [{ device, from, to }];
  /** @type {Run[]} */
  const runs = [];
  for (let cursor = await index.openKeyCursor(range); cursor; cursor = await cursor.continue()) {
    const place = Number(/** @type {[string, number]} */ (cursor.key)[1]);
    const last = runs.at(-1);
    if (last?.to === place - 1) last.to = place;
    else runs.push({ device, from: place, to: place });
  }
  return runs;
}

/**
 * @param {Run} gap
 * @param {Run} run
 * @returns {Run[]}
 */
function overlap(gap, run) {
  const both = { device: gap.device, from: Math.max(gap.from, run.from), to: Math.min(gap.to, run.to) };
  return gap.device === run.device && both.from <= both.to ? [both] : [];
}
