// The record of events: added one at a time, each on disk before anyone is told, never changed.

import { abandon } from "./connection.js";
import { withDatabase } from "./database.js";
import { seal } from "./events.js";
import { copyEvents, copyMemo } from "./second-copy.js";

/** @import { IDBPDatabase } from "../../vendor/idb.js" */
/** @import { CardEvent, Draft, Picture } from "../types.js" */

const STRICT = /** @type {const} */ ({ durability: "strict" });

// Another window of the same phone can take the next place first; each round somebody wins.
const RACES = 50;

const news = "BroadcastChannel" in globalThis ? new BroadcastChannel("underhoist-cards") : null;

/** @type {Promise<unknown>} */
let queue = Promise.resolve();

/**
 * Stores what happened. Resolves only when it is on disk and read back; asking again with the same
 * draft changes nothing.
 *
 * @param {Draft} draft
 * @param {number} [seen] the greatest clock that the page has seen: this event comes after it
 * @param {Picture} [picture] what a photo's event is about: both are stored, or neither
 * @returns {Promise<CardEvent>}
 * @throws {import("./trouble.js").StorageTrouble}
 */
export function append(draft, seen = 0, picture) {
  const stored = queue.then(() => withDatabase((database) => add(database, draft, seen, picture)));
  queue = stored.catch(() => {});
  return stored.then((event) => {
    announce(event.card);
    return event;
  });
}

/**
 * Tells the other windows that a card has new events.
 *
 * @param {string} card
 */
export function announce(card) {
  news?.postMessage(card);
}

/**
 * The picture of a photo's event, or null where this phone has the event and not the picture.
 *
 * @param {string} id of the event
 * @returns {Promise<Blob|null>}
 */
export async function pictureOf(id) {
  const kept = await withDatabase((database) => database.get("photos", id));
  return kept ? new Blob([kept.content], { type: kept.type }) : null;
}

/**
 * Ids of a card's photos whose pictures are on this phone.
 *
 * @param {string} card
 * @returns {Promise<Set<string>>}
 */
export async function picturesOf(card) {
  return new Set(await withDatabase((database) => database.getAllKeysFromIndex("photos", "card", card)));
}

/**
 * Every event of a card.
 *
 * @param {string} card
 * @returns {Promise<CardEvent[]>}
 */
export function eventsOf(card) {
  return withDatabase((database) => database.getAllFromIndex("events", "card", card));
}

/**
 * Every event on this phone.
 *
 * @returns {Promise<CardEvent[]>}
 */
export function allEvents() {
  return withDatabase((database) => database.getAll("events"));
}

/**
 * Calls back with a card's id when another window has stored an event of it.
 *
 * @param {(card: string) => void} told
 */
export function onNews(told) {
  news?.addEventListener("message", (message) => told(String(message.data)));
}

/**
 * Something this phone remembers about itself, or undefined.
 *
 * @param {string} name
 * @returns {Promise<unknown>}
 */
export async function remembered(name) {
  return (await withDatabase((database) => database.get("device", name)))?.value;
}

/**
 * @param {string} name
 * @param {unknown} value
 */
export async function remember(name, value) {
  await rememberHere(name, value);
  await copyMemo({ name, value });
}

/**
 * The same without a second copy.
 *
 * @param {string} name
 * @param {unknown} value
 */
export function rememberHere(name, value) {
  return withDatabase(async (database) => {
    const change = database.transaction("device", "readwrite", STRICT);
    await Promise.all([change.store.put({ name, value }), change.done]);
  });
}

/**
 * @param {IDBPDatabase} database
 * @param {Draft} draft
 * @param {number} seen
 * @param {Picture} [picture]
 * @returns {Promise<CardEvent>}
 */
async function add(database, draft, seen, picture) {
  for (let race = 0; race < RACES; race += 1) {
    const head = await readHead(database);
    const event = await seal(draft, { ...head, clock: Math.max(head.clock, seen) });
    const result = await addInPlace(database, event, picture);
    if (result === "taken") continue;
    const [readBack] = await Promise.all([
      database.get("events", event.id),
      copyEvents([event], picture && [[event.id, picture]]),
    ]);
    if (readBack) return readBack;
    break;
  }
  throw new DOMException("The event is not there after it was stored.", "UnknownError");
}

/**
 * One transaction, one event: the look and the addition cannot be separated by another window.
 *
 * @param {IDBPDatabase} database
 * @param {CardEvent} event
 * @param {Picture} [picture]
 * @returns {Promise<"stored"|"taken">}
 */
async function addInPlace(database, event, picture) {
  const change = database.transaction(["events", "photos"], "readwrite", STRICT);
  const events = change.objectStore("events");
  const known = await events.getKey(event.id);
  const taken = known === undefined && (await events.index("place").getKey([event.device, event.sequence]));
  try {
    if (known === undefined && !taken) {
      const photos = change.objectStore("photos");
      await Promise.all([
        events.add(event),
        picture && photos.add({ ...picture, id: event.id, card: event.card }),
      ]);
    }
    await change.done;
  } catch (error) {
    await abandon(change); // an event without its picture must not stay
    throw error;
  }
  return taken ? "taken" : "stored";
}

/**
 * Where the device's chain ends. The device is named in the database itself, so that a phone whose
 * storage was cleared begins a chain of its own instead of repeating numbers.
 *
 * @param {IDBPDatabase} database
 */
async function readHead(database) {
  const device = await deviceOf(database);
  const look = database.transaction("events");
  const range = IDBKeyRange.bound([device, 0], [device, Infinity]);
  const [last, latest] = await Promise.all([
    look.store.index("place").openCursor(range, "prev"),
    look.store.index("clock").openKeyCursor(null, "prev"),
  ]);
  const { sequence = 0, hash = "" } = last?.value ?? {};
  return { device, sequence, hash, clock: Number(latest?.key ?? 0) };
}

/**
 * @param {IDBPDatabase} database
 * @returns {Promise<string>}
 */
async function deviceOf(database) {
  const known = await database.get("device", "id");
  if (known) return known.value;
  const change = database.transaction("device", "readwrite", STRICT);
  const first = await change.store.get("id"); // another window may have been quicker
  const value = first?.value ?? crypto.randomUUID();
  if (!first) await change.store.add({ name: "id", value });
  await change.done;
  return value;
}
