// A reading in words. Pure, so that what goes to paper or into a file says the same as the screen.

/** @import { ReadingState } from "../types.js" */

/** @param {ReadingState} reading */
export function readingName({ asked, when }) {
  return `${asked.name}, ${when}`;
}

/**
 * "1 1/2 turns", or that it could not be read.
 *
 * @param {ReadingState} reading
 */
export function readingWords({ asked, taken }) {
  if (!taken) return "";
  if (taken.written === "") return "not readable";
  const one = taken.number === 1 && /^\w+s$/.test(asked.unit_words);
  return `${taken.written} ${one ? asked.unit_words.slice(0, -1) : asked.unit_words}`;
}

/**
 * What is said about a reading outside its limits or without a number, "" otherwise.
 *
 * @param {ReadingState} reading
 */
export function readingRemark({ asked, taken }) {
  if (!taken || taken.reason === "") return "";
  return taken.outside
    ? `Outside ${asked.limits_text}. Reason: ${taken.reason}`
    : `Reason: ${taken.reason}`;
}
