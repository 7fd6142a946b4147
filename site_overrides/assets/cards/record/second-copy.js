// A second copy of the record, in another of the browser's stores, one address an entry.
//
// Where a browser is killed in the middle of writing, Chromium's database goes on behind the half entry, and
// at the start after that it counts as damaged: without a word an empty one stands in its place. This store is
// kept in files of its own. What it cannot take is still in the database.

/** @import { CardEvent, Picture } from "../types.js" */

/** A name that no other store has: the manual's own begin alike and are cleared by its updates. */
export const COPY = "cards of underhoist, second copy";

/** What this phone remembers about itself. @typedef {{name: string, value: unknown}} Memo */

/**
 * @typedef {object} Copy
 * @property {CardEvent[]} events
 * @property {Map<string, Picture>} pictures by the id of their event
 * @property {Memo[]} memos
 */

/**
 * @param {CardEvent[]} events
 * @param {Iterable<[string, Picture]>} [pictures] by the id of their event
 * @returns {Promise<boolean>} whether the copy holds them now
 */
export function copyEvents(events, pictures = []) {
  return put([
    ...events.map((event) => entry("events", event.id, Response.json(event))),
    ...[...pictures].map(([id, { type, content }]) => entry("photos", id, pictured(type, content))),
  ]);
}

/** @param {Memo} memo */
export function copyMemo({ name, value }) {
  return put([entry("memos", name, Response.json({ name, value }))]);
}

/**
 * All that was copied, or null where this browser gives the page no such store.
 *
 * @returns {Promise<Copy|null>}
 */
export async function copied() {
  const store = await opened();
  if (!store) return null;
  /** @type {Copy} */
  const copy = { events: [], pictures: new Map(), memos: [] };
  // One that is damaged keeps none of the others away.
  await Promise.allSettled((await store.keys()).map((key) => readInto(copy, store, key)));
  return copy;
}

/**
 * @param {Copy} copy
 * @param {Cache} store
 * @param {Request} key
 */
async function readInto(copy, store, key) {
  const [kind, id] = new URL(key.url).pathname.split("/").slice(-2).map(decodeURIComponent);
  const kept = await store.match(key);
  if (!kept) return; // the browser leaves out whose file is damaged
  if (kind === "photos") {
    copy.pictures.set(id, { type: kept.headers.get("content-type") ?? "", content: await kept.arrayBuffer() });
  } else (kind === "events" ? copy.events : copy.memos).push(await kept.json());
}

/** @returns {Promise<Cache|null>} */
async function opened() {
  return (await globalThis.caches?.open(COPY).catch(() => null)) ?? null;
}

/**
 * @param {[string, Response][]} entries
 * @returns {Promise<boolean>}
 */
async function put(entries) {
  const store = await opened();
  if (!store) return false;
  const done = await Promise.allSettled(entries.map(([address, kept]) => store.put(address, kept)));
  return done.every(({ status }) => status === "fulfilled");
}

/**
 * @param {"events"|"photos"|"memos"} kind
 * @param {string} id
 * @param {Response} kept
 * @returns {[string, Response]}
 */
function entry(kind, id, kept) {
  return [new URL(`/second-copy/${kind}/${encodeURIComponent(id)}`, location.origin).href, kept];
}

/** @param {string} type @param {ArrayBuffer} content */
function pictured(type, content) {
  return new Response(content, { headers: { "content-type": type } });
}
