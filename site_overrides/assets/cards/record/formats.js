// A card keeps the texts it took, so every older shape of them stays readable for ever.
//
// Format of a procedure's text:
//   1  steps with torques, cautions, readings and whether they want a second check
//   2  parts know their look-alikes, steps what they take off and put back on, readings which way fluid
//      goes; the procedure's calculators. `date` and `author` came later: without them they are ""
//
// A text of a newer format is kept and not shown: `isReadable` tells.

/** @import { PartAsked, ProcedureText, ReadingAsked, StepText } from "../types.js" */

/** The shape of procedures as the build writes them today. */
export const FORMAT = 2;

/**
 * Whether this page knows the shape of a stored procedure. One whose format is no number is of no newer
 * shape: what looks into it refuses it.
 *
 * @param {any} kept
 */
export function isReadable(kept) {
  const format = kept?.format ?? 1;
  return typeof format !== "number" || format <= FORMAT;
}

/**
 * A procedure in today's shape, from any that was ever stored. What an older one did not know is empty.
 *
 * @param {any} kept
 * @returns {ProcedureText}
 */
export function asToday(kept) {
  const today = { date: "", author: "", calculators: [], ...kept, format: FORMAT };
  if (kept.format === FORMAT) return today;
  return { ...today, parts: kept.parts.map(part), steps: kept.steps.map(step) };
}

/** @param {any} first @returns {PartAsked} */
function part(first) {
  return { variants: [], ...first };
}

/** @param {any} first @returns {StepText} */
function step(first) {
  return { takes_off: [], puts_back: [], ...first, readings: first.readings.map(reading) };
}

/** @param {any} first @returns {ReadingAsked} */
function reading(first) {
  return { fluid: "", ...first };
}
