// Which results a card has for the checks of a complaint: what a person said, what a reading of the card
// decides, what a calculator's kept answer decides. Nothing is typed twice, and all is pure.

import { standingReadings } from "../record/review.js";

/** @import { Calculation, CardState, CheckResult, FaultState, Mark, ReadingState } from "../types.js" */
/** @import { FamilyData, Result } from "../../fault/types.js" */

/** Inside its limits it is good, outside bad. @typedef {{kind: "reading", procedure: string, reading: string}} ByReading */

/**
 * A pattern in neither list decides nothing.
 *
 * @typedef {{kind: "calculator", calculator: string, title?: string, bad: string[], good: string[]}} ByCalculator
 */

/**
 * A check's result with where it came from.
 *
 * @typedef {object} Counted
 * @property {string} check
 * @property {string} name what is looked at
 * @property {number} minutes
 * @property {Result} result
 * @property {Mark} mark
 * @property {CheckResult|null} said by a person
 * @property {ReadingState|null} reading that decided it
 * @property {Calculation|null} calculation that decided it
 */

/** @typedef {Pick<Counted, "result"|"mark"> & Partial<Counted>} Decided */

/**
 * Every result that the card has for a complaint, by the time that is shown with each. What a person said of a check goes
 * before what follows from a reading or an answer. A check that the manual no longer has stays where a
 * person gave its result.
 *
 * @param {CardState} card
 * @param {FaultState} fault
 * @param {FamilyData|null} family what the manual says of it, null where it cannot be read
 * @returns {Counted[]}
 */
export function countedResults(card, fault, family) {
  const checks = checksOf(family);
  const gone = [...fault.results.keys()].filter((id) => !checks.some((check) => check.id === id));
  const all = [...checks, ...gone.map((id) => ({ id, name: id, minutes: 0 }))];
  const counted = all.flatMap(({ id, name, minutes }) => {
    const said = fault.results.get(id);
    const decided = said ? { result: said.result, mark: said.mark, said } : follows(card, decidersOf(family, id));
    if (!decided) return [];
    const named = { name: said?.name || name, minutes: said?.minutes || minutes };
    return [{ check: id, ...named, said: null, reading: null, calculation: null, ...decided }];
  });
  return counted.sort((a, b) => (a.mark.at < b.mark.at ? -1 : Number(a.mark.at > b.mark.at)));
}

/**
 * The checks of a complaint as the manual writes them.
 *
 * @param {FamilyData|null} family
 * @returns {{id: string, name: string, minutes: number, access: string}[]}
 */
export function checksOf(family) {
  return /** @type {any} */ (family?.complaint)?.checks ?? [];
}

/**
 * @param {FamilyData|null} family
 * @param {string} check
 * @returns {(ByReading|ByCalculator)[]}
 */
export function decidersOf(family, check) {
  return /** @type {any[]} */ (family?.checks[check]?.decided_by ?? []);
}

/**
 * What the card's readings and kept answers say of a check. One that speaks of something bad goes
 * before any that speaks of something good.
 *
 * @param {CardState} card
 * @param {(ByReading|ByCalculator)[]} deciders
 * @returns {Decided|null}
 */
function follows(card, deciders) {
  const readings = deciders.flatMap((one) => (one.kind === "reading" ? [one] : []));
  const procedures = [...new Set(readings.map(({ procedure }) => procedure))];
  const told = [
    ...procedures.map((id) => byReadings(card, readings.filter(({ procedure }) => procedure === id))),
    ...deciders.map((one) => (one.kind === "calculator" ? byCalculator(card, one) : null)),
  ].flatMap((one) => one ?? []);
  return told.find(({ result }) => result === "bad") ?? told[0] ?? null;
}

/**
 * Any reading outside its limits is bad; good needs all of a procedure's readings inside theirs.
 *
 * @param {CardState} card
 * @param {ByReading[]} wanted of one procedure
 * @returns {Decided|null}
 */
function byReadings(card, wanted) {
  const taken = wanted.map((one) => readingOf(card, one));
  const outside = taken.find((reading) => reading?.taken?.outside);
  const reading = outside ?? taken.at(-1);
  if (!reading?.taken || (!outside && taken.includes(null))) return null;
  return { result: outside ? "bad" : "good", mark: reading.taken.mark, reading };
}

/**
 * The last reading with a number and limits to hold it against; as found goes before as left, which
 * tells of the vehicle after the work.
 *
 * @param {CardState} card
 * @param {ByReading} wanted
 * @returns {ReadingState|null}
 */
function readingOf(card, { procedure, reading }) {
  const names = [reading, `${procedure}/${reading}`];
  const all = card.jobs.filter(({ text }) => text.id === procedure).flatMap(standingReadings);
  const fit = all.filter(({ asked, taken }) => names.includes(asked.id) && taken !== null && taken.number !== null && isLimited(asked));
  const last = (/** @type {string} */ when) => fit.filter((one) => one.when === when).at(-1);
  return last("as found") ?? last("as left") ?? null;
}

/** @param {{low: number|null, high: number|null}} limits */
function isLimited({ low, high }) {
  return low !== null || high !== null;
}

/**
 * The latest answer of the calculator, where everything that it cannot tell apart says the same.
 *
 * @param {CardState} card
 * @param {ByCalculator} wanted
 * @returns {Decided|null}
 */
function byCalculator(card, { calculator, good, bad }) {
  const standing = new Set(card.jobs.flatMap(standingReadings).flatMap(({ taken }) => taken?.answer ?? []));
  const own = card.calculations.filter((one) => one.calculator === calculator && (!one.isOfReading || standing.has(one)));
  const latest = own.at(-1);
  if (!latest) return null;
  const codes = [latest.pattern, ...latest.rivals];
  const says = (/** @type {string[]} */ list) => codes.every((code) => list.includes(code));
  const result = says(bad) ? "bad" : says(good) ? "good" : null;
  return result && { result, mark: latest.mark, calculation: latest };
}
