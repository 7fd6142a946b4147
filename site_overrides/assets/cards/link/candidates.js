// Which readings of a card an answer of a calculator can be written to.

import { steps } from "../record/fold.js";
import { isOutside, readNumber } from "../record/numbers.js";

/** @import { CardState, ReadingState, StepState } from "../types.js" */

/** @typedef {{step: StepState, reading: ReadingState}} Candidate */

const MOST = 3;

/**
 * Readings in the answer's unit: those of the step in hand, or else the next ones not yet taken.
 *
 * @param {CardState} card
 * @param {number} at position of the step in hand, from 1
 * @param {string} unitWords such as "litres"
 * @returns {Candidate[]}
 */
export function candidates(card, at, unitWords) {
  const all = steps(card);
  const fitting = (/** @type {StepState} */ step) =>
    step.readings.filter(({ asked }) => asked.unit_words === unitWords).map((reading) => ({ step, reading }));
  const here = all[at - 1] ? fitting(all[at - 1]) : [];
  if (here.length > 0) return here;
  const open = all.flatMap(fitting).filter(({ reading, step }) => !reading.taken && !step.notNeeded);
  return open.slice(0, MOST);
}

/**
 * Whether the number of an answer lies outside the limits of the reading, and so wants a reason.
 *
 * @param {string} written
 * @param {ReadingState} reading
 */
export function wantsReason(written, { asked }) {
  const read = readNumber(written);
  return "number" in read && isOutside(read.number, asked);
}
