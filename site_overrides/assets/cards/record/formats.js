// A card keeps the texts it took, so every older shape of them stays readable for ever.

/** @import { PartAsked, ProcedureText, ReadingAsked, StepText } from "../types.js" */

/** The shape of procedures as the build writes them today. */
export const FORMAT = 2;

/**
 * A procedure in today's shape, from any that was ever stored. What an older one did not know is empty.
 *
 * @param {any} kept
 * @returns {ProcedureText}
 */
export function asToday(kept) {
  if (kept.format === FORMAT) return kept;
  const { parts, steps } = kept;
  return { calculators: [], ...kept, format: FORMAT, parts: parts.map(part), steps: steps.map(step) };
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
