// Results of checks in words. Pure, so that paper and files say the same as the screen.

import { readingName, readingWords } from "../kit/reading-words.js";

/** @import { Calculation } from "../types.js" */
/** @import { Counted } from "./counted.js" */

/** @type {Record<Counted["result"], string>} */
export const RESULT_WORDS = { good: "Good", bad: "Bad", "not done": "Not done" };

/**
 * What a result follows from, "" where a person gave it.
 *
 * @param {Counted} counted
 */
export function originWords({ reading, calculation }) {
  if (reading) return `from the reading “${readingName(reading)}”, ${readingWords(reading)}`;
  return calculation ? `from ${calculationWords(calculation)}` : "";
}

/**
 * "Shift check: late at light throttle only".
 *
 * @param {Calculation} calculation
 */
export function calculationWords({ name, calculator, summary, pattern }) {
  return `${name || idWords(calculator)}: ${(summary || idWords(pattern)).replace(/[.\s]+$/, "")}`;
}

/**
 * An id as words: "shift-check" is "Shift check".
 *
 * @param {string} id
 */
export function idWords(id) {
  const words = id.replaceAll("-", " ");
  return words.slice(0, 1).toUpperCase() + words.slice(1);
}

/**
 * "5 minutes", "" for none.
 *
 * @param {number} minutes
 */
export function minutesWords(minutes) {
  return minutes > 0 ? `${minutes} ${minutes === 1 ? "minute" : "minutes"}` : "";
}
