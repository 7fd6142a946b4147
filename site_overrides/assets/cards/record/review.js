// The last look at a card: what was off, what is still off, what went in and what came out.

import { steps } from "./fold.js";

/** @import { CardState, Job, ReadingState, StepState } from "../types.js" */

/**
 * @typedef {object} StillOff
 * @property {string} thing
 * @property {string} from title of the procedure that took it off
 * @property {StepState} step
 * @property {StepState[]} waiting steps that would put it back on
 */

/** @typedef {{reading: ReadingState, number: number}} Amount */

/**
 * Readings that have a number outside their limits, or none at all.
 *
 * @param {CardState} card
 */
export function outsideReadings(card) {
  const readings = steps(card).flatMap((step) => step.readings);
  return readings.filter(({ taken }) => taken && (taken.outside || taken.number === null));
}

/**
 * Steps that were left out with a reason.
 *
 * @param {CardState} card
 */
export function leftOut(card) {
  return steps(card).filter((step) => step.notNeeded !== null);
}

/**
 * What a ticked step took off and no ticked step put back on since, in the order of the steps. Each
 * putting back settles one taking off of the same name; the same words are meant, whatever the case.
 *
 * @param {CardState} card
 * @returns {StillOff[]}
 */
export function stillOff(card) {
  const done = new Map();
  for (const step of steps(card).filter(isDone)) {
    for (const thing of step.text.puts_back) done.set(plain(thing), (done.get(plain(thing)) ?? 0) + 1);
  }
  return card.jobs.flatMap((job) => job.steps.filter(isDone).flatMap((step) => offIn(card, job, step, done)));
}

/**
 * @param {CardState} card
 * @param {Job} job
 * @param {StepState} step
 * @param {Map<string, number>} done how often each was put back, less what was settled already
 * @returns {StillOff[]}
 */
function offIn(card, job, step, done) {
  return step.text.takes_off.flatMap((thing) => {
    const left = done.get(plain(thing)) ?? 0;
    done.set(plain(thing), left - 1);
    if (left > 0) return [];
    const waiting = steps(card).filter((other) => other.text.puts_back.some((one) => plain(one) === plain(thing)));
    return [{ thing, from: job.text.title, step, waiting }];
  });
}

/**
 * Fluid readings that have a number, and their sums in one unit; `mixed` where the units differ. What was
 * measured by an earlier text of a procedure went in or came out all the same.
 *
 * @param {CardState} card
 */
export function fluidLedger(card) {
  const all = card.jobs.flatMap(standingReadings);
  const amounts = (/** @type {"in"|"out"} */ way) =>
    all.flatMap((reading) => {
      const number = reading.asked.fluid === way ? reading.taken?.number : null;
      return typeof number === "number" ? [{ reading, number }] : [];
    });
  const [put, came] = [amounts("in"), amounts("out")];
  const units = new Set([...put, ...came].map(({ reading }) => reading.asked.unit));
  const sum = (/** @type {Amount[]} */ list) => list.reduce((total, { number }) => total + number, 0);
  const words = [...put, ...came][0]?.reading.asked.unit_words ?? "";
  return { put, came, mixed: units.size > 1, totalIn: sum(put), totalOut: sum(came), words };
}

/**
 * The readings of a procedure whose steps are needed. What was taken by an earlier text stands as long as
 * it is not taken anew.
 *
 * @param {Job} job
 * @returns {ReadingState[]}
 */
export function standingReadings({ steps: now, past }) {
  const of = (/** @type {StepState[]} */ list) => list.filter((step) => !step.notNeeded).flatMap(({ readings }) => readings);
  const anew = new Set(of(now).flatMap(({ key, taken }) => (taken ? [key] : [])));
  return [...of(past).filter(({ key }) => !anew.has(key)), ...of(now)];
}

/** @param {StepState} step */
function isDone(step) {
  return step.done !== null;
}

/** @param {string} thing */
function plain(thing) {
  return thing.trim().toLowerCase();
}
