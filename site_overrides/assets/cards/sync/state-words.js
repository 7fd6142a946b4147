// How the exchange stands, in one or two sentences.

import { counted } from "../record/left.js";

/**
 * @typedef {object} State
 * @property {boolean} joined whether this phone exchanges with a server at all
 * @property {boolean} locked whether the password is asked for again
 * @property {boolean} busy
 * @property {string} last when an exchange was last finished, ISO 8601; "" for never
 * @property {number} waiting entries and photos that the server does not have yet
 * @property {number} missing entries of other phones that lie between those that are here
 * @property {string} trouble what hinders it, "" where nothing does
 * @property {boolean} passes whether it goes on by itself
 */

/**
 * @param {State} state
 * @param {Date} [now]
 */
export function stateWords(state, now = new Date()) {
  const { joined, locked, busy, last, waiting } = state;
  if (!joined) return "This phone exchanges nothing with other phones.";
  if (locked) return `${waitWords(waiting)} Enter the password to go on.`;
  const done = last === "" ? "Nothing has been exchanged yet" : `Last exchanged ${whenWords(last, now)}`;
  const rest = waiting > 0 ? waitWords(waiting).toLowerCase() : "nothing waits.";
  return `${done}; ${rest}${busy ? " Exchanging now." : ""}`;
}

/**
 * What hinders, and whether a person has to do something.
 *
 * @param {State} state
 */
export function troubleWords({ trouble, passes }) {
  if (trouble === "") return "";
  return passes ? `${trouble} The cards go on working, and the exchange is tried again by itself.` : trouble;
}

/**
 * Entries of other phones that have not come: allowed, and said.
 *
 * @param {State} state
 */
export function missingWords({ missing }) {
  if (missing === 0) return "";
  const verb = missing === 1 ? "has" : "have";
  return `${counted(missing, "entry", "entries")} of other phones ${verb} not come yet: a phone that made them has not exchanged.`;
}

/** @param {number} count */
function waitWords(count) {
  return count === 0 ? "Nothing waits." : `${counted(count, "entry waits", "entries wait")}.`;
}

/**
 * "at 14:02", or with the day where it was not today.
 *
 * @param {string} at
 * @param {Date} now
 */
function whenWords(at, now) {
  const time = new Date(at);
  const clock = time.toLocaleTimeString("en-GB", { hour: "2-digit", minute: "2-digit" });
  if (time.toDateString() === now.toDateString()) return `at ${clock}`;
  const day = time.toLocaleDateString("en-GB", { day: "numeric", month: "short", year: "numeric" });
  return `on ${day} at ${clock}`;
}
