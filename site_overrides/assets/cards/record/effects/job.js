// How a procedure comes onto a card, and how a newer revision of it takes over.

import { asToday, isReadable } from "../formats.js";
import { matchSteps } from "../matching.js";
import { mark } from "./mark.js";

/** @import { CardEvent, CardState, Job, ReadingAsked, ReadingState, StepState, StepText } from "../../types.js" */

/**
 * Where a step of an earlier revision now stands: by the job, then by revision and number.
 *
 * @type {WeakMap<Job, Map<string, StepState>>}
 */
const EARLIER = new WeakMap();

/** @type {Record<string, (card: CardState, event: CardEvent) => void>} */
export const JOB_EFFECTS = {
  add(card, event) {
    if (!isReadable(event.value.procedure)) return void (card.unknown += 1);
    const text = asToday(event.value.procedure);
    const made = text.steps.map((step) => newStep(event.id, step));
    const place = Number(event.value.place ?? nextPlace(card));
    const job = { id: event.id, added: mark(event), place, text, steps: made, renewals: [], past: [] };
    EARLIER.set(job, new Map());
    card.jobs.push(job);
    card.jobs.sort((a, b) => a.place - b.place);
  },
  renew(card, event) {
    const job = jobOf(card, event);
    if (!isReadable(event.value.procedure)) return void (card.unknown += 1);
    const text = asToday(event.value.procedure);
    if (!job || text.id !== job.text.id || text.revision === job.text.revision) return;
    const from = job.text.revision;
    const words = /** @type {unknown[]} */ (event.value.words).map(String);
    takeOver(card, job, text.steps);
    job.text = text;
    job.renewals.push({ mark: mark(event), from, to: text.revision, words });
  },
};

/**
 * Behind all others.
 *
 * @param {CardState} card
 */
export function nextPlace(card) {
  return Math.max(0, ...card.jobs.map(({ place }) => place)) + 1;
}

/**
 * @param {CardState} card
 * @param {CardEvent} event
 */
export function jobOf(card, event) {
  return card.jobs.find((one) => one.id === event.value.job);
}

/**
 * The step that an event is about, also where its phone still worked by an earlier revision.
 *
 * @param {CardState} card
 * @param {CardEvent} event
 */
export function stepOf(card, event) {
  const job = jobOf(card, event);
  const number = Number(event.value.step);
  if (!job) return undefined;
  const isNow = event.revision === job.text.revision;
  const earlier = isNow ? undefined : EARLIER.get(job)?.get(`${event.revision}|${number}`);
  return earlier ?? job.steps.find((step) => step.text.number === number);
}

/**
 * Steps whose words did not change keep what is on them; the others are to be done anew, and what
 * was on them stays with the job's past. A finding goes with its step, or stays with the job alone.
 *
 * @param {CardState} card
 * @param {Job} job whose text is still the earlier one
 * @param {StepText[]} texts
 */
function takeOver(card, job, texts) {
  const before = job.steps;
  const places = EARLIER.get(job) ?? new Map();
  for (const step of before) places.set(`${job.text.revision}|${step.text.number}`, step);
  const found = [...card.findings].filter((finding) => finding.job === job.id);
  const foundAt = found.map(({ step }) => before.find(({ text }) => text.number === step));
  const same = matchSteps(before.map(({ text }) => text), texts);
  job.steps = texts.map((text, at) => {
    const kept = before[same[at]];
    return kept ? renewed(kept, keyOf(job.id, text), text) : newStep(job.id, text);
  });
  job.past.push(...before.filter((step) => !job.steps.includes(step)));
  found.forEach((finding, at) => (finding.step = numberIn(job, foundAt[at])));
}

/**
 * The number of a step among those that stand; 0 for one of an earlier text, or none.
 *
 * @param {Job|undefined} job
 * @param {StepState|undefined} step
 */
export function numberIn(job, step) {
  return step && job?.steps.includes(step) ? step.text.number : 0;
}

/**
 * @param {StepState} step
 * @param {string} key
 * @param {StepText} text
 */
function renewed(step, key, text) {
  for (const reading of step.readings) {
    reading.asked = text.readings.find(({ id }) => id === reading.asked.id) ?? reading.asked;
  }
  return Object.assign(step, { key, text });
}

/**
 * @param {string} job
 * @param {StepText} text
 * @returns {StepState}
 */
function newStep(job, text) {
  const empty = { done: null, check: null, notNeeded: null, question: null, answer: null };
  const readings = text.readings.flatMap(newReadings);
  return { key: keyOf(job, text), job, text, shape: "todo", ...empty, readings, photos: [], last: null };
}

/**
 * @param {string} job
 * @param {StepText} text
 */
function keyOf(job, text) {
  return `${job}|${text.number}`;
}

/**
 * A reading that is wanted as found and as left is two.
 *
 * @param {ReadingAsked} asked
 * @returns {ReadingState[]}
 */
function newReadings(asked) {
  const times = asked.when === "both" ? ["as found", "as left"] : [asked.when];
  return times.map((time) => {
    const when = /** @type {"as found"|"as left"} */ (time);
    return { key: `${asked.id}|${when}`, asked, when, taken: null };
  });
}
