// From the events of a card to how the card stands: pure, and blind to the order they arrive in.

import { inOrder, isWhole } from "./events.js";
import { isOutside, readNumber } from "./numbers.js";

/** @import { CardEvent, CardState, Job, Mark, ProcedureText, ReadingAsked, ReadingState } from "../types.js" */
/** @import { Shape, StepState, StepText, Vehicle } from "../types.js" */

/**
 * How a card stands, or null where its start is not among the events.
 *
 * @param {CardEvent[]} events of one card, in any order, repeated or not
 * @returns {CardState|null}
 */
export function foldCard(events) {
  const standing = standingEvents(events);
  const start = standing.find((event) => event.kind === "start");
  if (!start) return null;
  /** @type {CardState} */
  const card = {
    id: start.card,
    started: mark(start),
    vehicle: /** @type {Vehicle} */ (start.value.vehicle),
    complaint: text(start, "complaint"),
    fault: text(start, "fault"),
    jobs: [],
    closed: null,
    unknown: 0,
  };
  for (const event of standing) (EFFECTS[event.kind] ?? countUnknown)(card, event);
  for (const step of steps(card)) step.shape = shapeOf(step);
  return card;
}

/**
 * Every step of a card, job by job.
 *
 * @param {CardState} card
 * @returns {StepState[]}
 */
export function steps(card) {
  return card.jobs.flatMap((job) => job.steps);
}

/**
 * Whether two entries of initials mean the same person.
 *
 * @param {string} a
 * @param {string} b
 */
export function samePerson(a, b) {
  const plain = (/** @type {string} */ name) => name.toUpperCase().replace(/[^\p{L}\p{N}]/gu, "");
  return plain(a) === plain(b);
}

/**
 * Each event once, in order, without those that an undo took back. An undo can itself be undone.
 *
 * @param {CardEvent[]} events
 */
function standingEvents(events) {
  /** @type {Map<string, CardEvent>} */
  const once = new Map();
  for (const event of events) {
    const twin = once.get(event.id);
    if (!twin || event.hash < twin.hash) once.set(event.id, event);
  }
  /** @type {CardEvent[]} */
  const standing = [];
  /** @type {Set<unknown>} */
  const undone = new Set();
  for (const event of [...once.values()].filter(isWhole).sort(inOrder).reverse()) {
    if (undone.has(event.id) && event.kind !== "start") continue;
    if (event.kind === "undo") undone.add(event.value.of);
    standing.push(event);
  }
  return standing.reverse();
}

/** @type {Record<string, (card: CardState, event: CardEvent) => void>} */
const EFFECTS = {
  start() {},
  undo() {},
  add(card, event) {
    const procedure = /** @type {ProcedureText} */ (event.value.procedure);
    const made = procedure.steps.map((step) => newStep(event.id, step));
    card.jobs.push({ id: event.id, text: procedure, steps: made });
  },
  tick(card, event) {
    const step = stepOf(card, event);
    if (!step || step.done) return; // of two ticks the first one stands
    Object.assign(step, { done: mark(event), notNeeded: null, question: null });
    note(step, event, "the tick");
  },
  check(card, event) {
    const step = stepOf(card, event);
    if (!step?.done || step.check || step.done.event !== event.value.of) return;
    if (samePerson(step.done.who, event.who)) return;
    step.check = mark(event);
    note(step, event, "the second check");
  },
  reading(card, event) {
    const key = `${text(event, "reading")}|${text(event, "when")}`;
    const step = stepOf(card, event);
    const reading = step?.readings.find((one) => one.key === key);
    if (!step || !reading) return;
    const written = text(event, "written");
    const read = readNumber(written);
    const number = "number" in read ? read.number : null;
    const outside = number !== null && isOutside(number, reading.asked);
    reading.taken = { mark: mark(event), written, number, outside, reason: text(event, "reason") };
    note(step, event, `the reading ${written || "“not readable”"}`);
  },
  "not-needed"(card, event) {
    const step = stepOf(card, event);
    if (!step) return;
    const notNeeded = { ...mark(event), reason: text(event, "reason") };
    Object.assign(step, { notNeeded, done: null, check: null, question: null });
    note(step, event, "“not needed”");
  },
  "hand-back"(card, event) {
    const step = stepOf(card, event);
    if (!step || step.done) return;
    step.question = { ...mark(event), question: text(event, "question") };
    step.answer = null;
    note(step, event, "the question");
  },
  answer(card, event) {
    const step = stepOf(card, event);
    if (!step?.question || step.question.event !== event.value.of) return;
    step.answer = { ...mark(event), answer: text(event, "answer") };
    note(step, event, "the answer");
  },
  close(card, event) {
    card.closed ??= mark(event);
  },
};

/** @param {CardState} card */
function countUnknown(card) {
  card.unknown += 1;
}

/**
 * @param {string} job
 * @param {StepText} words
 * @returns {StepState}
 */
function newStep(job, words) {
  const empty = { done: null, check: null, notNeeded: null, question: null, answer: null };
  const readings = words.readings.flatMap(newReadings);
  const key = `${job}|${words.number}`;
  return { key, job, text: words, shape: "todo", ...empty, readings, last: null };
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

/**
 * @param {CardState} card
 * @param {CardEvent} event
 */
function stepOf(card, event) {
  const job = card.jobs.find((one) => one.id === event.value.job);
  return job?.steps.find((step) => step.text.number === event.value.step);
}

/**
 * @param {StepState} step
 * @returns {Shape}
 */
function shapeOf(step) {
  if (step.notNeeded) return "not-needed";
  if (step.done) return step.check ? "checked" : "stored";
  return step.question && !step.answer ? "handed-back" : "todo";
}

/**
 * @param {StepState} step
 * @param {CardEvent} event
 * @param {string} what
 */
function note(step, event, what) {
  step.last = { event: event.id, what: `${what} by ${event.who}` };
}

/**
 * @param {CardEvent} event
 * @returns {Mark}
 */
function mark(event) {
  return { event: event.id, who: event.who, at: event.at };
}

/**
 * @param {CardEvent} event
 * @param {string} name
 */
function text(event, name) {
  return String(event.value[name]);
}
