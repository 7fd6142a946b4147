// Between the record on this phone and a card's file.

import { eventsOf, announce, pictureOf } from "../record/store.js";
import { foldCard } from "../record/fold.js";
import { takeIn } from "../record/merge.js";
import { LARGEST, readCard, writeCard } from "./card-file.js";
import { gaps, without } from "./chain.js";
import { elsewhereOf, keepTold } from "./elsewhere.js";
import { Refusal } from "./refusal.js";

/** @import { CardEvent, Picture } from "../types.js" */
/** @import { CardFile } from "./card-file.js" */

/**
 * The text of a card's file from what is on this phone.
 *
 * @param {string} card
 * @param {string} name
 * @param {boolean} withPictures
 * @returns {Promise<string>}
 */
export async function fileOf(card, name, withPictures) {
  const events = await eventsOf(card);
  const pictures = withPictures ? await picturesOf(events) : new Map();
  return writeCard({ card, name, events, elsewhere: await elsewhereOf(card, events), pictures });
}

/**
 * The pictures of these events that are on this phone.
 *
 * @param {CardEvent[]} events
 * @returns {Promise<Map<string, Picture>>}
 */
async function picturesOf(events) {
  /** @type {Map<string, Picture>} */
  const found = new Map();
  for (const { id } of events.filter(({ kind }) => kind === "photo")) {
    const picture = await pictureOf(id);
    if (picture) found.set(id, { type: picture.type, content: await picture.arrayBuffer() });
  }
  return found;
}

/**
 * Reads a file that somebody chose, and finds out what of it is new here. Nothing is stored.
 *
 * @param {File} file
 * @returns {Promise<{file: CardFile, fresh: number, here: number, people: string[]}>}
 * @throws {Refusal}
 */
export async function lookInto(file) {
  if (file.size > LARGEST) {
    throw new Refusal("", `The file has ${sizeWords(file.size)}. A card’s file has ${sizeWords(LARGEST)} at most.`);
  }
  const read = await readCard(await file.text());
  const here = await eventsOf(read.card);
  const known = new Map(here.map(({ id, hash }) => [id, hash]));
  const other = read.events.find(({ id, hash }) => known.has(id) && known.get(id) !== hash);
  if (other) throw new Refusal(entryOf(read, other), CLASH.id);
  if (!foldCard([...here, ...read.events])) {
    throw new Refusal("", "The entry that starts the card is not in the file, and not on this phone. Ask for the whole card.");
  }
  const fresh = read.events.filter(({ id }) => !known.has(id));
  const people = [...new Set(read.events.map(({ who }) => who))].sort();
  return { file: read, fresh: fresh.length, here: here.length, people };
}

const CLASH = {
  id: "The same entry is on this phone with other contents. One of the two was changed.",
  place: "Another entry stands at its place of its phone’s chain. One of the two was changed.",
};

/**
 * Stores a file that was looked into: all of it, or nothing.
 *
 * @param {CardFile} file
 * @returns {Promise<{events: number, pictures: number, missing: number}>} what was new, and how many
 *   entries are missing between those of one phone
 * @throws {Refusal|import("../record/trouble.js").StorageTrouble}
 */
export async function takeInFile(file) {
  const { events, pictures, clash } = await takeIn(file.events, file.pictures);
  if (clash) throw new Refusal(entryOf(file, clash.event), CLASH[clash.kind]);
  await keepTold(file.card, file.elsewhere);
  announce(file.card);
  const now = await eventsOf(file.card);
  const open = without(gaps(now), await elsewhereOf(file.card, now));
  return { events, pictures, missing: open.reduce((sum, { from, to }) => sum + to - from + 1, 0) };
}

/**
 * @param {CardFile} file
 * @param {CardEvent} event
 */
function entryOf({ events }, event) {
  return `Entry ${events.indexOf(event) + 1} (${event.kind} by ${event.who})`;
}

/** @param {number} bytes */
export function sizeWords(bytes) {
  return bytes < 1e6 ? `${Math.ceil(bytes / 1e3)} kB` : `${(bytes / 1e6).toFixed(1)} MB`;
}
