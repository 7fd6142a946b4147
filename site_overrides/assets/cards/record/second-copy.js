// A second copy of the record, in another of the browser's stores.
//
// Where a browser is killed in the middle of writing, Chromium's database goes on behind the half entry, and
// at the start after that it counts as damaged: without a word an empty one stands in its place. What the
// copy cannot take is still in the database.

import { Entries } from "./entries.js";

/** @import { CardEvent, Picture } from "../types.js" */
/** @import { Entry } from "./entries.js" */

const entries = new Entries("cards of underhoist, second copy");

/** What this phone remembers about itself. @typedef {{name: string, value: unknown}} Memo */

/**
 * @typedef {object} Copy
 * @property {CardEvent[]} events
 * @property {Map<string, Picture>} pictures by the id of their event
 * @property {Memo[]} memos
 */

/**
 * Copies events, those that come together as one entry: an entry each takes five times as long as storing them.
 *
 * @param {CardEvent[]} events
 * @param {Iterable<[string, Picture]>} [pictures] by the id of their event
 * @returns {Promise<boolean>} whether the copy holds them now
 */
export function copyEvents(events, pictures = []) {
  const together = events.length > 0 ? [["events", nameOf(events), Response.json(events)]] : [];
  return entries.put([
    .../** @type {Entry[]} */ (together),
    ...[...pictures].map(([id, picture]) => /** @type {Entry} */ (["photos", id, contentOf(picture)])),
  ]);
}

/** @param {Memo} memo */
export function copyMemo({ name, value }) {
  return entries.put([["memos", name, Response.json({ name, value })]]);
}

/**
 * All that was copied, or null where this browser gives the page no such store.
 *
 * @returns {Promise<Copy|null>}
 */
export async function copied() {
  /** @type {Copy} */
  const copy = { events: [], pictures: new Map(), memos: [] };
  const isThere = await entries.read(async ([kind, id, content]) => {
    if (kind === "events") copy.events.push(...(await content.json()));
    else if (kind === "memos") copy.memos.push(await content.json());
    else copy.pictures.set(id, { type: content.headers.get("content-type") ?? "", content: await content.arrayBuffer() });
  });
  return isThere ? copy : null;
}

/** @param {CardEvent[]} events the same ones have the same name */
function nameOf([first, ...others]) {
  const last = others.at(-1);
  return last ? `${first.id} ${last.id} ${others.length}` : first.id;
}

/** @param {Picture} picture */
function contentOf({ type, content }) {
  return new Response(content, { headers: { "content-type": type } });
}
