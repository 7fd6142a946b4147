// From the events of a card to how the card stands: pure, and blind to the order they arrive in.

import { CARD_EFFECTS } from "./effects/card.js";
import { FAULT_EFFECTS, newFault } from "./effects/fault.js";
import { FINDING_EFFECTS } from "./effects/finding.js";
import { JOB_EFFECTS } from "./effects/job.js";
import { mark, text } from "./effects/mark.js";
import { STEP_EFFECTS } from "./effects/step.js";
import { inOrder, isWhole } from "./events.js";

/** @import { CardEvent, CardState, Shape, StepState, Vehicle } from "../types.js" */

const EFFECTS = { ...CARD_EFFECTS, ...JOB_EFFECTS, ...STEP_EFFECTS, ...FINDING_EFFECTS, ...FAULT_EFFECTS };

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
  const card = begun(start);
  for (const event of standing) (EFFECTS[event.kind] ?? countUnknown)(card, event);
  for (const step of steps(card)) step.shape = shapeOf(step);
  for (const step of card.jobs.flatMap(({ past }) => past)) step.shape = shapeOf(step);
  for (const job of card.jobs) job.past = job.past.filter(hasSomething);
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
 * @param {CardEvent} start
 * @returns {CardState}
 */
function begun(start) {
  const [fault, complaint] = [text(start, "fault"), text(start, "complaint")];
  return {
    id: start.card,
    started: mark(start),
    vehicle: /** @type {Vehicle} */ (start.value.vehicle),
    complaint,
    fault,
    faults: new Map(fault === "" ? [] : [[fault, newFault(fault, complaint, start)]]),
    calculations: [],
    jobs: [],
    findings: [],
    identified: new Map(),
    fetched: new Map(),
    closed: null,
    unknown: 0,
  };
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

/** @param {CardState} card */
function countUnknown(card) {
  card.unknown += 1;
}

/**
 * An open question goes before a tick: two phones can have done both at once.
 *
 * @param {StepState} step
 * @returns {Shape}
 */
function shapeOf(step) {
  if (step.notNeeded) return "not-needed";
  if (step.question && !step.answer) return "handed-back";
  if (step.done) return step.check ? "checked" : "stored";
  return "todo";
}

/** @param {StepState} step */
function hasSomething({ done, notNeeded, question, photos, readings }) {
  return done || notNeeded || question || photos.length > 0 || readings.some(({ taken }) => taken);
}
