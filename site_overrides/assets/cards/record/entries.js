// Entries in a store that the browser keeps apart from its database, each in a file of its own.

/** @import { IDBPDatabase } from "../../vendor/idb.js" */

/** Stands in a database that holds what its copy holds; one that the browser began anew has none. */
export const LEVEL = "second copy";

/**
 * Levels a database and its copy, where they are not known to hold the same.
 *
 * @param {IDBPDatabase} database
 * @param {() => Promise<boolean>} level whether they hold the same now
 */
export async function whereNotLevel(database, level) {
  if (await database.get("device", LEVEL)) return;
  if (await level()) await database.put("device", { name: LEVEL, value: true });
}

/** One entry. @typedef {[kind: string, id: string, content: Response]} Entry */

export class Entries {
  /** @param {string} name one that no other store has: the manual's own begin alike and are cleared by its updates */
  constructor(name) {
    this.name = name;
  }

  /**
   * @param {Entry[]} entries
   * @returns {Promise<boolean>} whether all of them are kept now
   */
  async put(entries) {
    const store = await this.open();
    if (!store) return false;
    const done = await Promise.allSettled(
      entries.map(([kind, id, content]) => store.put(addressOf(kind, id), content)),
    );
    return done.every(({ status }) => status === "fulfilled");
  }

  /**
   * Reads every entry; one that is damaged keeps none of the others away.
   *
   * @param {(entry: Entry) => Promise<unknown>} take
   * @returns {Promise<boolean>} false where this browser gives the page no such store
   */
  async read(take) {
    const store = await this.open();
    if (!store) return false;
    const keys = await store.keys();
    await Promise.allSettled(
      keys.map(async (key) => {
        const [kind, id] = new URL(key.url).pathname.split("/").slice(-2).map(decodeURIComponent);
        const content = await store.match(key);
        if (content) await take([kind, id, content]);
      }),
    );
    return true;
  }

  /**
   * @private
   * @returns {Promise<Cache|null>}
   */
  async open() {
    return (await globalThis.caches?.open(this.name).catch(() => null)) ?? null;
  }
}

/** @param {string} kind @param {string} id */
function addressOf(kind, id) {
  return new URL(`/second-copy/${kind}/${encodeURIComponent(id)}`, location.origin).href;
}
