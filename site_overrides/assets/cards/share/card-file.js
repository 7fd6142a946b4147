// A card as one file: JSON, the same bytes for the same card, whatever phone wrote it.
//
// Versions of the file:
//   1  {format, version, card, name, events, elsewhere, pictures}
//      events     in their order, as they are in the record; their hashes are checked again
//      elsewhere  places of the devices' chains that other cards take, so that a gap can be told from a loss
//      pictures   [{event, content in base64}], or [] where they were left out

import { canonical } from "../record/canonical.js";
import { inOrder } from "../record/events.js";
import { checkHashes } from "./chain.js";
import { checkEvent } from "./event-shape.js";
import { toPicture, toText } from "./pictures.js";
import { checkPlain } from "./plain.js";
import { Refusal, shown } from "./refusal.js";
import { group, listOf, text, whole } from "./shape.js";

/** @import { CardEvent, Picture } from "../types.js" */
/** @import { Run } from "./chain.js" */

export const FORMAT = "underhoist-card";
export const VERSION = 1;

/** Bytes of the largest file that is read or written. */
export const LARGEST = 40_000_000;

const MOST_EVENTS = 20_000;
const MOST_RUNS = 5_000;
const MOST_PICTURES = 1_000;

/**
 * @typedef {object} CardFile
 * @property {string} card
 * @property {string} name what the vehicle is called, for people
 * @property {CardEvent[]} events
 * @property {Run[]} elsewhere
 * @property {Map<string, Picture>} pictures by the id of their event
 */

/**
 * The text of a card's file.
 *
 * @param {CardFile} file
 * @returns {string}
 */
export function writeCard({ card, name, events, elsewhere, pictures }) {
  const ids = [...pictures.keys()].sort();
  const held = ids.map((event) => ({ event, content: toText(/** @type {Picture} */ (pictures.get(event)).content) }));
  const ordered = [...events].sort(inOrder);
  const runs = [...elsewhere].sort((a, b) => (a.device < b.device ? -1 : Number(a.device > b.device)) || a.from - b.from);
  const whole = { format: FORMAT, version: VERSION, card, name, events: ordered, elsewhere: runs, pictures: held };
  return `${canonical(whole)}\n`;
}

/**
 * Reads a file that may come from anywhere, and refuses it whole where anything in it is wrong.
 *
 * @param {string} written
 * @returns {Promise<CardFile>}
 * @throws {Refusal}
 */
export async function readCard(written) {
  const held = /** @type {any} */ (headOf(written));
  FILE(held, "The file");
  const { pictures, ...rest } = held;
  checkPlain(rest, "The file");
  const where = placesOf(held.events);
  const events = held.events.map((/** @type {unknown} */ event, /** @type {number} */ at) =>
    checkEvent(event, `Entry ${at + 1}`),
  );
  checkTogether(held.card, events, where);
  await checkHashes(events, where);
  return { card: held.card, name: held.name, events, elsewhere: held.elsewhere, pictures: await picturesOf(held) };
}

const RUN = group({ device: text(40), from: whole(1), to: whole(1) });

const FILE = group({
  card: text(40),
  name: text(500),
  events: listOf(group({}), MOST_EVENTS),
  elsewhere: listOf(RUN, MOST_RUNS),
  pictures: listOf(group({ event: text(40), content: text(LARGEST) }), MOST_PICTURES),
});

/**
 * The file's JSON, where it says that it is a card of a version that this page reads.
 *
 * @param {string} written
 * @returns {unknown}
 */
function headOf(written) {
  if (written.trim() === "") throw new Refusal("", "The file is empty.");
  let held;
  try {
    held = JSON.parse(written);
  } catch {
    throw new Refusal("", "The file is no JSON, or it was cut off on its way. Send it once more.");
  }
  if (typeof held !== "object" || held === null || !Object.hasOwn(held, "format") || held.format !== FORMAT) {
    throw new Refusal("", "This is not a card of this manual: nothing in it says underhoist-card. Another program made it.");
  }
  if (!Number.isSafeInteger(held.version) || held.version < 1) {
    throw new Refusal("The file, version", `${shown(held.version)} is no version of a card file.`);
  }
  if (held.version > VERSION) {
    throw new Refusal("", "A newer version of the manual made this file. Reload this page while there is a signal, then try again.");
  }
  return held;
}

/**
 * How an event is named to people: by its place in the file and its kind.
 *
 * @param {unknown[]} events
 * @returns {(event: CardEvent) => string}
 */
function placesOf(events) {
  const places = new Map(events.map((event, at) => [event, at + 1]));
  return (event) => `Entry ${places.get(event)} (${event.kind} by ${event.who})`;
}

/**
 * @param {string} card
 * @param {CardEvent[]} events
 * @param {(event: CardEvent) => string} where
 */
function checkTogether(card, events, where) {
  if (events.length === 0) throw new Refusal("The file", "There is no entry in it.");
  const stranger = events.find((event) => event.card !== card);
  if (stranger) throw new Refusal(where(stranger), "It belongs to another card than the file says.");
  const seen = new Set();
  for (const event of events) {
    if (seen.has(event.id)) throw new Refusal(where(event), "Its id stands in the file twice.");
    seen.add(event.id);
  }
}

/**
 * @param {{events: CardEvent[], pictures: {event: string, content: string}[]}} held
 * @returns {Promise<Map<string, Picture>>}
 */
async function picturesOf({ events, pictures }) {
  const photos = new Map(events.filter(({ kind }) => kind === "photo").map((event) => [event.id, event]));
  /** @type {Map<string, Picture>} */
  const found = new Map();
  for (const [at, { event, content }] of pictures.entries()) {
    const where = `Picture ${at + 1}`;
    const photo = photos.get(event);
    if (!photo || found.has(event)) throw new Refusal(where, "No photo of the card asks for it, or it is there twice.");
    found.set(event, await toPicture(content, photo, where));
  }
  return found;
}
