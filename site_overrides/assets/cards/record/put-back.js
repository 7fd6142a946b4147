// What the database has lost comes back from the second copy, before anybody looks for it.

import { LEVEL, whereNotLevel } from "./entries.js";
import { copied, copyEvents, copyMemo } from "./second-copy.js";

/** @import { IDBPDatabase } from "../../vendor/idb.js" */
/** @import { CardEvent, Picture } from "../types.js" */
/** @import { Copy } from "./second-copy.js" */

/** Names that say what this database is: never taken from another one. */
const OWN = new Set(["id", "probe", "room", LEVEL]);

let entries = 0;

/** How many entries this page has put back. */
export const broughtBack = () => entries;

/**
 * Makes the database and its copy hold the same, where they are not known to. The phone's id is not put back:
 * its chain may have gone on after the last copy, and no number may be given twice.
 *
 * @param {IDBPDatabase} database
 */
export function level(database) {
  return whereNotLevel(database, async () => {
    const copy = await copied().catch(() => null);
    if (!copy) return false;
    entries += await fill(database, copy);
    return copyRest(database, copy);
  });
}

/**
 * Adds what is missing, all or nothing.
 *
 * @param {IDBPDatabase} database
 * @param {Copy} copy
 * @returns {Promise<number>} events that were missing
 */
async function fill(database, { events: all, pictures, memos }) {
  const events = [...new Map(all.map((event) => [event.id, event])).values()]; // some were copied twice
  const change = database.transaction(["events", "photos", "device"], "readwrite", { durability: "strict" });
  const [there, photos, device] = ["events", "photos", "device"].map((name) => change.objectStore(name));
  const places = there.index("place");
  const missing = await without(events, async ({ id, device: of, sequence }) => {
    return (await there.getKey(id)) ?? places.getKey([of, sequence]);
  });
  const cards = new Map(events.map(({ id, card }) => [id, card]));
  const shots = await without([...pictures], ([id]) => photos.getKey(id));
  const notes = await without(memos, ({ name }) => (OWN.has(name) ? name : device.getKey(name)));
  await Promise.all([
    ...missing.map((event) => there.add(event)),
    ...shots.filter(([id]) => cards.has(id)).map(([id, picture]) => photos.add({ ...picture, id, card: cards.get(id) })),
    ...notes.map((memo) => device.add(memo)),
    change.done,
  ]);
  return missing.length;
}

/**
 * Copies what only the database holds: all of it, on a phone whose records are from before there was a copy.
 *
 * @param {IDBPDatabase} database
 * @param {Copy} copy
 * @returns {Promise<boolean>} whether the copy took all of it
 */
async function copyRest(database, { events, pictures, memos }) {
  const known = new Set(events.map(({ id }) => id));
  /** @type {CardEvent[]} */
  const fresh = (await database.getAll("events")).filter(({ id }) => !known.has(id));
  const noted = new Set([...OWN, ...memos.map(({ name }) => name)]);
  const notes = (await database.getAll("device")).filter(({ name }) => !noted.has(name));
  const done = [await copyEvents(fresh), ...(await Promise.all(notes.map(copyMemo)))];
  for (const id of /** @type {string[]} */ (await database.getAllKeys("photos"))) {
    if (!pictures.has(id)) done.push(await copyEvents([], [[id, await database.get("photos", id)]]));
  }
  return done.every(Boolean);
}

/**
 * @template T
 * @param {T[]} all
 * @param {(each: T) => Promise<unknown>|unknown} isThere
 * @returns {Promise<T[]>} those for which nothing was found
 */
async function without(all, isThere) {
  const found = await Promise.all(all.map(isThere));
  return all.filter((_each, at) => found[at] === undefined);
}
