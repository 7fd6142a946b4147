// What comes from the server may have been written by anybody: each entry is let in by itself or refused.

import { hashOf } from "../record/canonical.js";
import { checkEvent } from "../share/event-shape.js";
import { checkPlain } from "../share/plain.js";
import { Refusal } from "../share/refusal.js";
import { withoutMarks } from "./documents.js";

/** @import { CardEvent } from "../types.js" */

/** @typedef {{id: string, wrong: string}} Refused */

/**
 * Looks up the events of this phone at places of the devices' chains.
 *
 * @typedef {(places: [string, number][]) => Promise<CardEvent[]>} At
 */

/**
 * The events among documents, and why the others are none.
 *
 * @param {Record<string, unknown>[]} docs
 * @param {At} at
 * @returns {Promise<{events: CardEvent[], refused: Refused[]}>}
 */
export async function checkEvents(docs, at) {
  /** @type {CardEvent[]} */
  const sound = [];
  /** @type {Refused[]} */
  const refused = [];
  for (const doc of docs) {
    const { id, body } = withoutMarks(doc);
    try {
      sound.push(await checkDocument(id, body));
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      refused.push({ id, wrong: error.message });
    }
  }
  const events = await checkPlaces(sound, at, refused);
  return { events, refused };
}

/**
 * @param {string} id
 * @param {Record<string, unknown>} body
 * @returns {Promise<CardEvent>}
 */
async function checkDocument(id, body) {
  const where = "An entry from the server";
  checkPlain(body, where);
  const event = checkEvent(body, where);
  const place = `${where} (${event.kind} by ${event.who})`;
  if (event.id !== id) throw new Refusal(place, "It stands under an id that is not its own.");
  const { hash, ...rest } = event;
  if (hash !== (await hashOf(rest))) throw new Refusal(place, "It was changed after it was made: its hash does not fit.");
  return event;
}

/**
 * Leaves out what contradicts its neighbours in its phone's chain, in this batch or on this phone.
 * Neighbours that are not here yet are no fault: other phones exchange when they can.
 *
 * @param {CardEvent[]} sound
 * @param {At} at
 * @param {Refused[]} refused
 */
async function checkPlaces(sound, at, refused) {
  const around = sound.flatMap(neighbours);
  const held = new Map((await at(around)).map((event) => [placeOf(event), event]));
  const inChain = [...sound].sort((a, b) => a.sequence - b.sequence); // whoever comes first in a batch does not matter
  return inChain.filter((event) => {
    const wrong = contradiction(event, held);
    if (wrong) refused.push({ id: event.id, wrong: `An entry from the server (${event.kind} by ${event.who}): ${wrong}` });
    else held.set(placeOf(event), event);
    return !wrong;
  });
}

/**
 * @param {CardEvent} event
 * @param {Map<string, CardEvent>} held
 */
function contradiction(event, held) {
  const { device, sequence, previous, hash } = event;
  const same = held.get(placeOf(event));
  if (same && same.hash !== hash) return "Another entry stands at its place of its phone’s chain. One of the two was changed.";
  const before = held.get(placeOf({ device, sequence: sequence - 1 }));
  const after = held.get(placeOf({ device, sequence: sequence + 1 }));
  const first = sequence === 1;
  if (first !== (previous === "") || (before && before.hash !== previous)) {
    return "It does not follow from the entry before it.";
  }
  return after && after.previous !== hash ? "The entry after it does not follow from it." : "";
}

/** @param {CardEvent} event @returns {[string, number][]} its own place too */
function neighbours({ device, sequence }) {
  return [-1, 0, 1].map((step) => [device, sequence + step]);
}

/** @param {{device: string, sequence: number}} place */
function placeOf({ device, sequence }) {
  return `${device} ${sequence}`;
}
