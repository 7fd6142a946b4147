// A second copy of the drafts, for the reason that stands in `cards/record/second-copy.js`.

import { Entries, whereNotLevel } from "../cards/record/entries.js";

/** @import { IDBPDatabase } from "../vendor/idb.js" */
/** @import { Draft } from "./types.js" */

const entries = new Entries("drafts of underhoist, second copy");

/** @param {Draft} draft */
export function copyDraft(draft) {
  return entries.put([["drafts", draft.id, Response.json(draft)]]);
}

/**
 * Puts back the drafts that the database has lost, and copies those that only it holds. Earlier texts of a
 * draft have no copy.
 *
 * @param {IDBPDatabase} database
 */
export function level(database) {
  return whereNotLevel(database, () => exchange(database));
}

/**
 * @param {IDBPDatabase} database
 * @returns {Promise<boolean>} whether both hold the same now
 */
async function exchange(database) {
  /** @type {Map<string, Draft>} */
  const copy = new Map();
  const isThere = await entries.read(async ([, id, content]) => copy.set(id, await content.json())).catch(() => false);
  if (!isThere) return false;
  const change = database.transaction("drafts", "readwrite", { durability: "strict" });
  /** @type {Draft[]} */
  const there = await change.store.getAll();
  const known = new Set(there.map(({ id }) => id));
  const lost = [...copy.values()].filter(({ id }) => !known.has(id));
  await Promise.all([...lost.map((draft) => change.store.add(draft)), change.done]);
  const done = await Promise.all(there.filter(({ id }) => !copy.has(id)).map(copyDraft));
  return done.every(Boolean);
}
