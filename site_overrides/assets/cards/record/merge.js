// Events that were made before, on another phone or on this one: taken in as they are, all or none.

import { abandon } from "./connection.js";
import { withDatabase } from "./database.js";
import { copyEvents } from "./second-copy.js";

/** @import { IDBPTransaction } from "../../vendor/idb.js" */
/** @import { CardEvent, Picture } from "../types.js" */

const STRICT = /** @type {const} */ ({ durability: "strict" });

const LONG = 60_000; // ms; a large card with its pictures is one transaction

/** @typedef {IDBPTransaction<unknown, string[], "readwrite">} Change */

/** Pictures by the id of the event they belong to. @typedef {Map<string, Picture>} Pictures */

/**
 * @typedef {object} Taken
 * @property {number} events that this phone did not have
 * @property {number} pictures that this phone did not have
 * @property {{event: CardEvent, kind: "id"|"place"}|null} clash the first event that contradicts one that is
 *   here: the same id with other contents, or the same place in its phone's chain. Nothing was stored then
 */

/**
 * Takes in events of one card and pictures of them, in one transaction. Those that are here already
 * stay untouched, so that doing it twice changes nothing.
 *
 * @param {CardEvent[]} events
 * @param {Pictures} [pictures]
 * @returns {Promise<Taken>}
 * @throws {import("./trouble.js").StorageTrouble}
 */
export async function takeIn(events, pictures = new Map()) {
  const taken = await withDatabase(async (database) => {
    const change = database.transaction(["events", "photos"], "readwrite", STRICT);
    try {
      const taken = await takeInto(change, events, pictures);
      if (taken.clash) await abandon(change);
      else await change.done;
      return taken;
    } catch (error) {
      await abandon(change); // whatever went wrong: what was added before it must not stay
      throw error;
    }
  }, LONG);
  if (!taken.clash) await copyEvents(events, pictures);
  return taken;
}

/**
 * @param {Change} change
 * @param {CardEvent[]} events
 * @param {Pictures} pictures
 * @returns {Promise<Taken>}
 */
async function takeInto(change, events, pictures) {
  const [store, photos] = [change.objectStore("events"), change.objectStore("photos")];
  const known = await Promise.all(events.map(({ id }) => store.get(id)));
  const fresh = events.filter((_event, at) => known[at] === undefined);
  const places = fresh.map(({ device, sequence }) => store.index("place").getKey([device, sequence]));
  const clash = clashOf(events, known, fresh, await Promise.all(places));
  if (clash) return { events: 0, pictures: 0, clash };
  const cards = new Map(events.map(({ id, card }) => [id, card]));
  const there = await Promise.all([...pictures.keys()].map((id) => photos.getKey(id)));
  const missing = [...pictures].filter((_picture, at) => there[at] === undefined);
  await Promise.all([
    ...fresh.map((event) => store.add(event)),
    ...missing.map(([id, picture]) => photos.add({ ...picture, id, card: cards.get(id) })),
  ]);
  return { events: fresh.length, pictures: missing.length, clash: null };
}

/**
 * Puts back what a page still holds after the browser has cleared its storage. What contradicts
 * something there stays away; that cannot happen to a phone's own events.
 *
 * @param {CardEvent[]} events
 * @param {Pictures} [pictures]
 */
export async function keep(events, pictures) {
  await takeIn(events, pictures);
}

/**
 * @param {CardEvent[]} events
 * @param {(CardEvent|undefined)[]} known what is here under the same ids
 * @param {CardEvent[]} fresh
 * @param {unknown[]} taken what stands at the places of the fresh ones
 * @returns {Taken["clash"]}
 */
function clashOf(events, known, fresh, taken) {
  const other = events.find((event, at) => known[at] !== undefined && known[at]?.hash !== event.hash);
  if (other) return { event: other, kind: "id" };
  const second = fresh.find((_event, at) => taken[at] !== undefined);
  return second ? { event: second, kind: "place" } : null;
}
