// Where the record of job cards is kept.
//
// Stores by version:
//   1  events     every event, by its id; found by card, by place (device and sequence, once each) and clock
//      device     what this phone knows of itself, by name: its id, the initials, what it was told of the
//                 chains of other phones
//   2  photos     pictures by the id of their event, found by card
//      summaries  how each card stood at a number of events: made again from events at any time
//
// An upgrade only ever adds. It is one transaction: cut off midway it leaves the older version as it was.

import { Connection } from "./connection.js";
import { level } from "./put-back.js";

/** @import { IDBPDatabase } from "../../vendor/idb.js" */

export const DATABASE = "underhoist-cards";

/** Raise it with every change of the stores, and add to `upgrade` what leads there. */
export const VERSION = 2;

const cards = new Connection(DATABASE, VERSION, upgrade, level);

/**
 * Does some work on the cards' database; it may be done twice, see `Connection`.
 *
 * @template T
 * @param {(database: IDBPDatabase) => Promise<T>} work
 * @param {number} [limit] ms that one try may take
 * @returns {Promise<T>}
 * @throws {import("./trouble.js").StorageTrouble}
 */
export const withDatabase = (work, limit) => cards.with(work, limit);

/**
 * @param {IDBPDatabase} database
 * @param {number} from 0 where there was none
 */
function upgrade(database, from) {
  if (from < 1) {
    const events = database.createObjectStore("events", { keyPath: "id" });
    events.createIndex("card", "card");
    events.createIndex("place", ["device", "sequence"], { unique: true });
    events.createIndex("clock", "clock");
    database.createObjectStore("device", { keyPath: "name" });
  }
  if (from < 2) {
    const photos = database.createObjectStore("photos", { keyPath: "id" });
    photos.createIndex("card", "card");
    database.createObjectStore("summaries", { keyPath: "card" });
  }
}
