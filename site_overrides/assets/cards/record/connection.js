// One connection to a database, never kept once it is dead, and a bounded number of tries.

import { openDB } from "../../vendor/idb.js";

import { StorageTrouble, isWorthRetrying, troubleOf } from "./trouble.js";

/** @import { IDBPDatabase } from "../../vendor/idb.js" */

/** Makes the stores; `from` is 0 where there was no database.
 * @typedef {(database: IDBPDatabase, from: number) => void} Upgrade */

// Some browsers never answer the first request, or drop a connection while the phone sleeps.
const OPEN_TIMEOUT = 4000;
const WORK_TIMEOUT = 6000;
const SETTLE_TIMEOUT = 60_000; // a phone's whole record may have to be written
const PAUSES = [0, 60, 250, 1000];

export class Connection {
  /**
   * @param {string} name
   * @param {number} version
   * @param {Upgrade} upgrade
   * @param {(database: IDBPDatabase) => Promise<void>} [settle] what comes before any other work on a database
   *   that was opened
   */
  constructor(name, version, upgrade, settle = async () => {}) {
    this.name = name;
    this.version = version;
    this.upgrade = upgrade;
    this.settle = settle;
    /** @type {Promise<IDBPDatabase>|null} */
    this.opened = null;
  }

  /**
   * Does some work on the database. Where the connection is dead it is dropped and opened anew, a
   * few times, so the work must be such that doing it twice changes nothing.
   *
   * @template T
   * @param {(database: IDBPDatabase) => Promise<T>} work
   * @param {number} [limit] ms that one try may take
   * @returns {Promise<T>}
   * @throws {StorageTrouble}
   */
  async with(work, limit = WORK_TIMEOUT) {
    let trouble = new StorageTrouble("lost");
    for (const pause of PAUSES) {
      if (pause > 0) await new Promise((done) => setTimeout(done, pause));
      try {
        return await inTime(work(await this.connect()), limit);
      } catch (error) {
        this.drop();
        trouble = troubleOf(error);
        if (!isWorthRetrying(trouble)) break;
      }
    }
    throw trouble;
  }

  /** Forgets the connection; the next piece of work opens its own. */
  drop() {
    const old = this.opened;
    this.opened = null;
    old?.then((database) => database.close()).catch(() => {});
  }

  /**
   * @private
   * @returns {Promise<IDBPDatabase>}
   */
  connect() {
    if (!globalThis.isSecureContext) return Promise.reject(new StorageTrouble("insecure"));
    if (!globalThis.indexedDB) return Promise.reject(new StorageTrouble("missing"));
    this.opened ??= this.open().then(async (database) => {
      await inTime(this.settle(database), SETTLE_TIMEOUT);
      return database;
    });
    return this.opened;
  }

  /**
   * @private
   * @returns {Promise<IDBPDatabase>}
   */
  open() {
    /** @type {(trouble: StorageTrouble) => void} */
    let refuse = () => {};
    const blocked = new Promise((_done, fail) => (refuse = fail));
    const drop = () => this.drop();
    const opened = openDB(this.name, this.version, {
      upgrade: this.upgrade,
      // An older page in another window is asked to let go; it gets a moment to do so.
      blocked: () => setTimeout(() => refuse(new StorageTrouble("blocked")), 1500),
      blocking: drop,
      terminated: drop,
    });
    return inTime(/** @type {Promise<IDBPDatabase>} */ (Promise.race([opened, blocked])), OPEN_TIMEOUT);
  }
}

/**
 * Takes a change back whole. One that was aborted by the browser already stays so.
 *
 * @param {{abort: () => void, done: Promise<unknown>}} change
 */
export async function abandon(change) {
  try {
    change.abort();
  } catch {
    // It is over: committed or aborted.
  }
  await change.done.catch(() => {});
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
