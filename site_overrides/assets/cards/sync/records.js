// The record of this phone, as far as an exchange touches it: it reads, and adds what others made.

import { withDatabase } from "../record/database.js";
import { takeIn } from "../record/merge.js";

/** @import { IDBPDatabase } from "../../vendor/idb.js" */
/** @import { CardEvent } from "../types.js" */
/** @import { Records } from "./exchange.js" */

/** @type {Records} */
export const records = {
  eventIds: () => withDatabase((database) => database.getAllKeys("events")),
  photoIds: () => withDatabase((database) => database.getAllKeys("photos")),
  events: (ids) => withDatabase((database) => eventsBy(database, ids)),
  at: (places) => withDatabase((database) => eventsAt(database, places)),
  picture: (id) => withDatabase(async (database) => (await database.get("photos", id)) ?? null),
  takeIn,
};

/**
 * How many entries lie, by their numbers, between those of each device that are here.
 *
 * @returns {Promise<number>}
 */
export function missing() {
  return withDatabase(async (database) => {
    const index = database.transaction("events").store.index("place");
    let sum = 0;
    let next = await index.openKeyCursor();
    while (next) {
      const [device] = /** @type {[string, number]} */ (next.key);
      const own = IDBKeyRange.bound([device, 0], [device, Infinity]);
      const [count, last] = await Promise.all([index.count(own), index.openKeyCursor(own, "prev")]);
      sum += Number(/** @type {[string, number]} */ (last?.key)[1]) - count;
      next = await index.openKeyCursor(IDBKeyRange.lowerBound([device, Infinity], true));
    }
    return sum;
  });
}

/**
 * @param {IDBPDatabase} database
 * @param {string[]} ids
 * @returns {Promise<CardEvent[]>}
 */
async function eventsBy(database, ids) {
  const { store } = database.transaction("events");
  const found = await Promise.all(ids.map((id) => store.get(id)));
  return found.filter((event) => event !== undefined);
}

/**
 * @param {IDBPDatabase} database
 * @param {[string, number][]} places
 * @returns {Promise<CardEvent[]>}
 */
async function eventsAt(database, places) {
  const index = database.transaction("events").store.index("place");
  const found = await Promise.all(places.map((place) => index.get(place)));
  return found.filter((event) => event !== undefined);
}
