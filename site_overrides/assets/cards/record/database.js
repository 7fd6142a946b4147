// One connection to the database, never kept once it is dead, and a bounded number of tries.

import { openDB } from "../../vendor/idb.js";

import { StorageTrouble, isWorthRetrying, troubleOf } from "./trouble.js";

/** @import { IDBPDatabase } from "../../vendor/idb.js" */

export const DATABASE = "underhoist-cards";

/** Raise it with every change of the stores, and add to `upgrade` what leads there. */
export const VERSION = 1;

// Some browsers never answer the first request, or drop a connection while the phone sleeps.
const OPEN_TIMEOUT = 4000;
const WORK_TIMEOUT = 6000;
const PAUSES = [0, 60, 250, 1000];

/** @type {Promise<IDBPDatabase>|null} */
let connection = null;

/**
 * Does some work on the database. Where the connection is dead it is dropped and opened anew, a
 * few times, so the work must be such that doing it twice changes nothing.
 *
 * @template T
 * @param {(database: IDBPDatabase) => Promise<T>} work
 * @returns {Promise<T>}
 * @throws {StorageTrouble}
 */
export async function withDatabase(work) {
  let trouble = new StorageTrouble("lost");
  for (const pause of PAUSES) {
    await new Promise((done) => setTimeout(done, pause));
    try {
      return await inTime(connect().then(work), WORK_TIMEOUT);
    } catch (error) {
      drop();
      trouble = troubleOf(error);
      if (!isWorthRetrying(trouble)) break;
    }
  }
  throw trouble;
}

/** Forgets the connection; the next piece of work opens its own. */
export function drop() {
  const old = connection;
  connection = null;
  old?.then((database) => database.close()).catch(() => {});
}

/** @returns {Promise<IDBPDatabase>} */
function connect() {
  if (!globalThis.isSecureContext) return Promise.reject(new StorageTrouble("insecure"));
  if (!globalThis.indexedDB) return Promise.reject(new StorageTrouble("missing"));
  connection ??= open();
  return connection;
}

/** @returns {Promise<IDBPDatabase>} */
function open() {
  /** @type {(trouble: StorageTrouble) => void} */
  let refuse = () => {};
  const blocked = new Promise((_done, fail) => (refuse = fail));
  const opened = openDB(DATABASE, VERSION, {
    upgrade,
    // An older page in another window is asked to let go; it gets a moment to do so.
    blocked: () => setTimeout(() => refuse(new StorageTrouble("blocked")), 1500),
    blocking: drop,
    terminated: drop,
  });
  return inTime(
    /** @type {Promise<IDBPDatabase>} */ (Promise.race([opened, blocked])),
    OPEN_TIMEOUT,
  );
}

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
}

/**
 * @template T
 * @param {Promise<T>} work
 * @param {number} limit in ms
 * @returns {Promise<T>}
 */
function inTime(work, limit) {
  return new Promise((done, fail) => {
    const timer = setTimeout(() => fail(new StorageTrouble("slow")), limit);
    work.then(done, fail).finally(() => clearTimeout(timer));
  });
}
