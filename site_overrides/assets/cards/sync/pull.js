// Takes from the server what others have sent: events in bounded batches, then the pictures of them.

import { Refusal } from "../share/refusal.js";
import { toPicture } from "../share/pictures.js";
import { PICTURE, eventOfPhoto, photoDocId } from "./documents.js";
import { checkEvents } from "./incoming.js";
import { ExchangeTrouble } from "./trouble.js";
import { TooLarge, ask } from "./wire.js";

/** @import { CardEvent, Picture } from "../types.js" */
/** @import { Around } from "./exchange.js" */
/** @import { Refused } from "./incoming.js" */

/** @typedef {{id: string, deleted?: boolean, doc?: Record<string, unknown>}} Change */

const AT_ONCE = 25; // an event that adds a procedure has some ten thousand characters

/** @param {Around} around */
export async function pullEvents(around) {
  let limit = AT_ONCE;
  for (;;) {
    const { since } = await around.notes.load();
    const page = await changes(around, since, limit, true).catch(tooLarge);
    if (page) {
      await takeInPage(around, page);
      if (page.results.length < limit) return;
      limit = AT_ONCE;
    } else if (limit > 1) {
      limit = 1;
    } else {
      await stepOver(around, since);
    }
  }
}

/** @param {unknown} error */
function tooLarge(error) {
  if (error instanceof TooLarge) return null;
  throw error;
}

/**
 * @param {Around} around
 * @param {string|number} since
 * @param {number} limit
 * @param {boolean} whole with the documents
 * @returns {Promise<{results: Change[], last_seq: string|number}>}
 */
async function changes({ shop, signal }, since, limit, whole) {
  const asked = new URLSearchParams({ since: String(since), limit: String(limit), include_docs: String(whole) });
  const page = await ask(shop, { path: `_changes?${asked}`, signal });
  const { results, last_seq: last } = page ?? {};
  const sound = Array.isArray(results) && results.every((one) => typeof one?.id === "string");
  if (!sound || !["string", "number"].includes(typeof last)) throw new ExchangeTrouble("foreign");
  return page;
}

/**
 * Leaves out one document that is larger than anything of a card.
 *
 * @param {Around} around
 * @param {string|number} since
 */
async function stepOver(around, since) {
  const { results, last_seq } = await changes(around, since, 1, false);
  const told = results.map(({ id }) => ({ id, wrong: "An entry on the server is larger than any entry of a card. It was left out." }));
  await around.notes.add({ since: last_seq, told });
}

/**
 * Stores what one page of the feed brings, and only then remembers to have seen it.
 *
 * @param {Around} around
 * @param {{results: Change[], last_seq: string|number}} page
 */
async function takeInPage({ records, notes, progress }, { results, last_seq }) {
  const once = [...new Map(results.map((change) => [change.id, change])).values()];
  const there = once.filter(({ id, deleted }) => !id.startsWith("_") && !deleted);
  const photos = there.flatMap(({ id }) => eventOfPhoto(id) ?? []);
  const docs = there.flatMap(({ id, doc }) => (doc && eventOfPhoto(id) === null ? [doc] : []));
  const { events, refused } = await checkEvents(docs, (places) => records.at(places));
  const taken = await takeInSound(events, records, refused);
  const gone = await deletedHere(once, records);
  const known = [...taken.map(({ id }) => id), ...photos.map(photoDocId)];
  await notes.add({ since: last_seq, known, offered: photos, told: [...refused, ...gone] });
  progress([...new Set(taken.map(({ card }) => card))]);
}

/**
 * Stores events; one that contradicts what is here is refused, and the others are stored without it.
 *
 * @param {CardEvent[]} events
 * @param {Around["records"]} records
 * @param {Refused[]} refused
 * @returns {Promise<CardEvent[]>} those that are on this phone now
 */
async function takeInSound(events, records, refused) {
  let left = events;
  while (left.length > 0) {
    const { clash } = await records.takeIn(left, new Map());
    if (!clash) break;
    const { event } = clash;
    refused.push({
      id: event.id,
      wrong: `An entry from the server (${event.kind} by ${event.who}): it is on this phone with other contents. This phone keeps its own.`,
    });
    left = left.filter((one) => one !== event);
  }
  return left;
}

/**
 * What others have deleted on the server stays on this phone.
 *
 * @param {Change[]} changes
 * @param {Around["records"]} records
 * @returns {Promise<Refused[]>}
 */
async function deletedHere(changes, records) {
  const ids = changes.flatMap(({ id, deleted }) => (deleted ? [id] : []));
  const here = await records.events(ids);
  return here.map(({ id, kind, who }) => ({
    id,
    wrong: `An entry (${kind} by ${who}) was deleted on the server. It stays on this phone.`,
  }));
}

/**
 * Fetches the pictures that the feed has named, one by one. Those of events that have not come yet wait.
 *
 * @param {Around} around
 */
export async function pullPhotos(around) {
  const { records, notes, progress } = around;
  const here = new Set(await records.photoIds());
  for (const id of await notes.offered()) {
    const [event] = here.has(id) ? [] : await records.events([id]);
    if (!here.has(id) && !event) continue;
    const told = event ? await fetchPhoto(around, event) : [];
    await notes.add({ settled: [id], told });
    if (event) progress([event.card]);
  }
}

/**
 * @param {Around} around
 * @param {CardEvent} event
 * @returns {Promise<Refused[]>} why it was not taken in, if it was not
 */
async function fetchPhoto({ shop, records, signal }, event) {
  const id = photoDocId(event.id);
  try {
    const doc = await ask(shop, { path: `${encodeURIComponent(id)}?attachments=true`, signal });
    const picture = await toPicture(dataOf(doc), event, `A photo from the server (by ${event.who})`);
    await records.takeIn([event], new Map([[event.id, picture]]));
    return [];
  } catch (error) {
    if (error instanceof ExchangeTrouble && error.code === "missing") return []; // deleted meanwhile
    if (error instanceof Refusal || error instanceof TooLarge) return [{ id, wrong: error.message }];
    throw error;
  }
}

/** @param {any} doc */
function dataOf(doc) {
  const data = doc?._attachments?.[PICTURE]?.data;
  return typeof data === "string" ? data : "";
}
