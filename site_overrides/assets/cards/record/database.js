// Where the record of job cards is kept.

import { Connection } from "./connection.js";

/** @import { IDBPDatabase } from "../../vendor/idb.js" */

export const DATABASE = "underhoist-cards";

/** Raise it with every change of the stores, and add to `upgrade` what leads there. */
export const VERSION = 2;

const cards = new Connection(DATABASE, VERSION, upgrade);

/**
 * Does some work on the cards' database; it may be done twice, see `Connection`.
 *
 * @template T
 * @param {(database: IDBPDatabase) => Promise<T>} work
 * @returns {Promise<T>}
 * @throws {import("./trouble.js").StorageTrouble}
 */
export const withDatabase = (work) => cards.with(work);

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
