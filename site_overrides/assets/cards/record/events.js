// What can happen on a card, how it becomes an immutable event, and how a chain of them is checked.
//
// Schema of an event:
//   1  as types.js says. A new kind, or one more entry in a value, is no new schema: a page that does
//      not know the kind keeps the event and counts it. What an older page would misread is one.

import { hashOf } from "./canonical.js";

/** @import { CardEvent, Draft } from "../types.js" */

export const SCHEMA = 1;

/** Every kind of event and the texts its value holds. */
export const KINDS = /** @type {const} */ ({
  start: ["complaint", "fault"],
  vehicle: [],
  add: [],
  renew: ["job"],
  fetch: ["thing"],
  identify: ["part", "variant", "how"],
  tick: ["job"],
  check: ["job", "of"],
  reading: ["job", "reading", "when", "written", "reason"],
  "not-needed": ["job", "reason"],
  "hand-back": ["job", "question"],
  answer: ["job", "of", "answer"],
  photo: ["job", "finding", "type", "sha256"],
  finding: ["job", "what", "urgency"],
  decide: ["of", "decision", "note"],
  complaint: ["fault", "complaint"],
  result: ["fault", "check", "result"],
  calculation: ["calculator", "pattern", "name", "summary", "from"],
  undo: ["of"],
  close: [],
});

/** @typedef {keyof typeof KINDS} Kind */

/**
 * @typedef {object} Happening
 * @property {string} who initials
 * @property {Kind} kind
 * @property {Record<string, unknown>} value
 * @property {string} [revision]
 */

/**
 * What happened, ready to be stored. Its id is made here, once, whatever storing it takes.
 *
 * @param {Happening & {card: string}} what
 * @returns {Draft}
 */
export function draft({ card, who, kind, value, revision = "" }) {
  const at = new Date().toISOString();
  return { id: crypto.randomUUID(), at, who, card, kind, value, revision };
}

/**
 * A draft in its place behind the device's last event.
 *
 * @param {Draft} what
 * @param {{device: string, sequence: number, hash: string, clock: number}} head
 * @returns {Promise<CardEvent>}
 */
export async function seal(what, head) {
  const body = {
    ...what,
    schema: SCHEMA,
    device: head.device,
    sequence: head.sequence + 1,
    clock: head.clock + 1,
    previous: head.hash,
  };
  return { ...body, hash: await hashOf(body) };
}

/**
 * Order of events, the same on every phone whatever its clock says: what had been seen comes first.
 *
 * @param {CardEvent} a
 * @param {CardEvent} b
 */
export function inOrder(a, b) {
  if (a.clock !== b.clock) return a.clock - b.clock;
  if (a.device !== b.device) return a.device < b.device ? -1 : 1;
  if (a.sequence !== b.sequence) return a.sequence - b.sequence;
  return a.id < b.id ? -1 : Number(a.id > b.id);
}

/**
 * Whether the value holds what its kind needs. Kinds of a newer version pass: they are kept.
 *
 * @param {CardEvent} event
 */
export function isWhole(event) {
  if (!Object.hasOwn(KINDS, event.kind)) return true;
  const wanted = KINDS[/** @type {Kind} */ (event.kind)];
  if (!wanted.every((name) => typeof event.value[name] === "string")) return false;
  return (WHOLE[event.kind] ?? (() => true))(event.value);
}

/** What else a kind's value must hold. @type {Record<string, (value: Record<string, any>) => boolean>} */
const WHOLE = {
  start: ({ vehicle }) => typeof vehicle?.identification === "string",
  vehicle: ({ vehicle }) => typeof vehicle?.identification === "string",
  add: ({ procedure, place = 0 }) => Array.isArray(procedure?.steps) && Number.isFinite(place),
  renew: ({ procedure, words }) => Array.isArray(procedure?.steps) && Array.isArray(words),
  photo: ({ width, height, bytes }) => [width, height, bytes].every(Number.isFinite),
  calculation: ({ rivals }) => Array.isArray(rivals),
};

/**
 * The first event of a device's chain that does not follow from the one before it, or null.
 *
 * @param {CardEvent[]} events all of one device
 * @returns {Promise<CardEvent|null>}
 */
export async function brokenLink(events) {
  let previous = "";
  let sequence = 0;
  for (const event of [...events].sort((a, b) => a.sequence - b.sequence)) {
    const { hash, ...body } = event;
    sequence += 1;
    const follows = event.previous === previous && event.sequence === sequence;
    if (!follows || hash !== (await hashOf(body))) return event;
    previous = hash;
  }
  return null;
}
