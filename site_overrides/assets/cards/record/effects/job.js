// How a procedure comes onto a card, and how a newer revision of it takes over.

import { asToday } from "../formats.js";
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
    const text = asToday(event.value.procedure);
    if (!job || text.id !== job.text.id || text.revision === job.text.revision) return;
    const from = job.text.revision;
    const words = /** @type {unknown[]} */ (event.value.words).map(String);
    takeOver(job, text.steps, from);
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
 * was on them stays with the job's past.
 *
 * @param {Job} job
 * @param {StepText[]} texts
 * @param {string} from the revision that is left
 */
function takeOver(job, texts, from) {
  const left = [...job.steps];
  const places = EARLIER.get(job) ?? new Map();
  job.steps.forEach((step) => places.set(`${from}|${step.text.number}`, step));
  job.steps = texts.map((text) => {
    const same = left.findIndex((step) => step.text.html === text.html);
    if (same < 0) return newStep(job.id, text);
    const [kept] = left.splice(same, 1);
    return Object.assign(kept, { key: keyOf(job.id, text), text });
  });
  job.past.push(...left);
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
