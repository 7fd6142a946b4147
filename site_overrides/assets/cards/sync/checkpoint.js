// Whether the server is still the one that this phone remembers.
//
// A `_local` document on the server counts the finished exchanges of this phone, and so does the phone.
// Where the server counts fewer, its database was made anew or put back from an older copy: then the
// phone forgets what it believed to be there and exchanges everything once more.

import { ask } from "./wire.js";
import { ExchangeTrouble } from "./trouble.js";

/** @import { Notes } from "./exchange.js" */
/** @import { Shop } from "./wire.js" */

/** @typedef {{_id: string, _rev?: string, turn: number}} Checkpoint */

/**
 * Greets the server and makes sure of what is remembered of it.
 *
 * @param {Shop} shop
 * @param {Notes} notes
 * @param {AbortSignal} signal
 * @returns {Promise<Checkpoint>} what the server has of this phone
 * @throws {ExchangeTrouble}
 */
export async function greet(shop, notes, signal) {
  const about = await ask(shop, { path: "", signal });
  if (typeof about?.db_name !== "string") throw new ExchangeTrouble("foreign");
  const note = await notes.load();
  const fresh = { _id: `_local/underhoist-${note.session}`, turn: 0 };
  const held = await ask(shop, { path: fresh._id, signal }).catch(noneYet);
  if (!held) {
    if (note.turn > 0) await notes.startOver();
    return fresh;
  }
  if (!Number.isSafeInteger(held.turn)) throw new ExchangeTrouble("foreign");
  if (held.turn < note.turn) await notes.startOver();
  return { ...fresh, _rev: String(held._rev), turn: held.turn };
}

/**
 * Counts a finished exchange: on the server first, so that the phone never counts more.
 *
 * @param {Shop} shop
 * @param {Notes} notes
 * @param {Checkpoint} held
 * @param {AbortSignal} signal
 */
export async function farewell(shop, notes, held, signal) {
  const turn = held.turn + 1;
  try {
    await ask(shop, { method: "PUT", path: held._id, body: { ...held, turn }, signal });
  } catch (error) {
    if (error instanceof ExchangeTrouble && error.status === 409) return; // another window has counted
    throw error;
  }
  await notes.count(turn);
}

/** @param {unknown} error */
function noneYet(error) {
  if (error instanceof ExchangeTrouble && error.code === "missing") return null;
  throw error;
}
