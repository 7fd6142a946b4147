// One exchange between this phone and the shop's server. It can be cut off anywhere: what was stored
// and what was remembered always fit, and the next exchange goes on from there.

import { farewell, greet } from "./checkpoint.js";
import { eventOfPhoto } from "./documents.js";
import { pullEvents, pullPhotos } from "./pull.js";
import { pushEvents, pushPhotos } from "./push.js";

/** @import { CardEvent, Picture } from "../types.js" */
/** @import { Taken } from "../record/merge.js" */
/** @import { At, Refused } from "./incoming.js" */
/** @import { Shop } from "./wire.js" */

/**
 * The record of this phone, as far as an exchange touches it.
 *
 * @typedef {object} Records
 * @property {() => Promise<string[]>} eventIds
 * @property {() => Promise<string[]>} photoIds of the events whose picture is here
 * @property {(ids: string[]) => Promise<CardEvent[]>} events those of them that are here
 * @property {At} at
 * @property {(id: string) => Promise<Picture|null>} picture
 * @property {(events: CardEvent[], pictures: Map<string, Picture>) => Promise<Taken>} takeIn
 */

/** @typedef {{session: string, turn: number, since: string|number}} Note */

/**
 * @typedef {object} News to be remembered together, or not at all
 * @property {string|number} [since] how far the feed was read
 * @property {string[]} [known] documents that the server has
 * @property {string[]} [offered] events whose picture the server has
 * @property {string[]} [settled] of those offered, the ones that need no more
 * @property {Refused[]} [told] what a person should know
 */

/**
 * What this phone remembers of the server. Losing it costs time, never an entry.
 *
 * @typedef {object} Notes
 * @property {() => Promise<Note>} load
 * @property {(news: News) => Promise<void>} add
 * @property {(turn: number) => Promise<void>} count
 * @property {() => Promise<Set<string>>} known
 * @property {() => Promise<string[]>} offered
 * @property {() => Promise<void>} startOver
 */

/**
 * @typedef {object} Around
 * @property {Shop} shop
 * @property {Records} records
 * @property {Notes} notes
 * @property {AbortSignal} signal
 * @property {Set<string>} stuck documents that the server has refused: not sent again on and on
 * @property {(cards: string[]) => void} progress told after every step, with the cards that grew
 */

/**
 * @param {Around} around
 * @throws {import("./trouble.js").ExchangeTrouble|import("../record/trouble.js").StorageTrouble}
 */
export async function exchange(around) {
  const { shop, records, notes, signal } = around;
  if (await wasCleared(records, notes)) await notes.startOver();
  const held = await greet(shop, notes, signal);
  const before = JSON.stringify(await notes.load());
  const known = (await notes.known()).size;
  await pushEvents(around);
  await pullEvents(around);
  await pushPhotos(around);
  await pullPhotos(around);
  const moved = before !== JSON.stringify(await notes.load()) || known !== (await notes.known()).size;
  if (moved || held._rev === undefined) await farewell(shop, notes, held, signal);
}

/**
 * Whether the browser has cleared the record and not these notes: then everything is fetched again.
 *
 * @param {Records} records
 * @param {Notes} notes
 */
async function wasCleared(records, notes) {
  const [here, known] = await Promise.all([records.eventIds(), notes.known()]);
  const ids = new Set(here);
  return [...known].some((id) => eventOfPhoto(id) === null && !ids.has(id));
}
