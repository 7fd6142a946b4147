// Sends to the server what it does not have: events first, each picture after its event.

import { eventDoc, inBatches, photoDoc, photoDocId } from "./documents.js";
import { ExchangeTrouble } from "./trouble.js";
import { waiting } from "./waiting.js";
import { ask } from "./wire.js";

/** @import { Doc } from "./documents.js" */
/** @import { Around } from "./exchange.js" */

const AT_ONCE = 100; // events read from the phone's storage together
const BOUNDS = { most: 100, size: 400_000 }; // characters; a minute on a poor signal

/** @param {Around} around */
export async function pushEvents(around) {
  const events = (await waiting(around)).events.filter((id) => !around.stuck.has(id));
  for (let from = 0; from < events.length; from += AT_ONCE) {
    const held = await around.records.events(events.slice(from, from + AT_ONCE));
    for (const batch of inBatches(held.map(eventDoc), BOUNDS)) await sendBatch(around, batch);
  }
}

/** @param {Around} around */
export async function pushPhotos(around) {
  const photos = (await waiting(around)).photos.filter((id) => !around.stuck.has(photoDocId(id)));
  for (const id of photos) {
    const picture = await around.records.picture(id);
    if (picture) await sendBatch(around, [photoDoc(id, picture)]);
  }
}

/**
 * Sends some documents. Where the server finds a batch too large, or something in it wrong, halves of
 * it find out which; what it takes by no means stays on this phone and is told.
 *
 * @param {Around} around
 * @param {Doc[]} docs
 * @returns {Promise<void>}
 */
async function sendBatch(around, docs) {
  const { shop, notes, signal, stuck, progress } = around;
  try {
    const answer = await ask(shop, { method: "POST", path: "_bulk_docs", body: { docs }, signal });
    const { known, told } = readAnswer(docs, answer);
    for (const { id } of told) stuck.add(id);
    await notes.add({ known, told });
    progress([]);
  } catch (error) {
    if (!(error instanceof ExchangeTrouble) || (error.code !== "large" && error.code !== "refused")) throw error;
    if (docs.length === 1) {
      stuck.add(docs[0]._id);
      await notes.add({ told: [{ id: docs[0]._id, wrong: `An entry of this phone stays on it. ${error.message}` }] });
      return;
    }
    const half = Math.ceil(docs.length / 2);
    await sendBatch(around, docs.slice(0, half));
    await sendBatch(around, docs.slice(half));
  }
}

/**
 * What the server says of each document, in any order. A conflict means that it has the document.
 *
 * @param {Doc[]} docs
 * @param {unknown} answer
 */
function readAnswer(docs, answer) {
  if (!Array.isArray(answer)) throw new ExchangeTrouble("foreign");
  const said = new Map(answer.map((one) => [one?.id, one]));
  const known = [];
  const told = [];
  for (const { _id } of docs) {
    const one = said.get(_id);
    if (one?.ok || one?.error === "conflict") known.push(_id);
    else if (one?.error) told.push({ id: _id, wrong: `An entry of this phone stays on it: the server says “${brief(one)}”.` });
  }
  return { known, told };
}

/** @param {{error: unknown, reason?: unknown}} said */
function brief({ error, reason }) {
  return String(reason ?? error).slice(0, 80);
}
