// Fluid in against fluid out, in words. A difference is pointed out; what it means is for the person.

import { fluidLedger } from "../record/review.js";

/** @import { Amount } from "../record/review.js" */
/** @import { CardState } from "../types.js" */

/**
 * One sentence each; none where no fluid was measured.
 *
 * @param {CardState} card
 * @returns {string[]}
 */
export function fluidSentences(card) {
  const { put, came, mixed, totalIn, totalOut, words } = fluidLedger(card);
  if (put.length + came.length === 0) return [];
  if (mixed) {
    const listed = [`Came out: ${list(came)}.`, `Put in: ${list(put)}.`];
    return [...listed, "These are in different units, so they are not added up."];
  }
  const sums = `${amount(totalOut, words)} came out, ${amount(totalIn, words)} put in.`;
  const more = Number((totalIn - totalOut).toFixed(3));
  if (more === 0) return [sums, "As much was put in as came out."];
  const way = more > 0 ? "more was put in than came out" : "less was put in than came out";
  return [sums, `${amount(Math.abs(more), words)} ${way}.`, ...beyondMarks(card, Math.abs(more))];
}

/**
 * "1.2 litres".
 *
 * @param {number} number
 * @param {string} words of the unit, such as "litres"
 */
export function amount(number, words) {
  const rounded = Number(number.toFixed(3));
  const unit = rounded === 1 && /^\w+s$/.test(words) ? words.slice(0, -1) : words;
  return `${rounded} ${unit}`;
}

/**
 * @param {CardState} card
 * @param {number} difference in the unit of the readings
 */
function beyondMarks(card, difference) {
  const { put, came, words } = fluidLedger(card);
  const unit = [...put, ...came][0]?.reading.asked.unit;
  const [, number, own] = /^(\d+(?:\.\d+)?) (.+)$/.exec(card.vehicle.between_marks ?? "") ?? [];
  if (own !== unit || difference <= Number(number)) return [];
  return [`That is more than lies between the dipstick’s marks, ${amount(Number(number), words)}.`];
}

/** @param {Amount[]} amounts */
function list(amounts) {
  const words = amounts.map(({ reading, number }) => amount(number, reading.asked.unit_words));
  return words.join(", ") || "nothing measured";
}
