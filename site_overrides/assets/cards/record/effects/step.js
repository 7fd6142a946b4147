// What the events about a single step do to it.

import { isOutside, readNumber } from "../numbers.js";
import { samePerson } from "../people.js";
import { answerIn } from "./fault.js";
import { stepOf } from "./job.js";
import { mark, note, text } from "./mark.js";

/** @import { CardEvent, CardState } from "../../types.js" */

/** @type {Record<string, (card: CardState, event: CardEvent) => void>} */
export const STEP_EFFECTS = {
  tick(card, event) {
    const step = stepOf(card, event);
    if (!step || step.done) return; // of two ticks the first one stands
    Object.assign(step, { done: mark(event), notNeeded: null });
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
    const reason = text(event, "reason");
    const from = String(event.value.from ?? "");
    const answer = answerIn(event);
    if (answer) card.calculations.push(answer);
    reading.taken = { mark: mark(event), written, number, outside, reason, from, answer };
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
    const step = askedOf(card, event);
    if (!step) return;
    step.question = { ...mark(event), question: text(event, "question") };
    step.answer = null;
    if ("shape" in step) note(step, event, "the question");
  },
  answer(card, event) {
    const step = askedOf(card, event);
    if (!step?.question || step.question.event !== event.value.of) return;
    step.answer = { ...mark(event), answer: text(event, "answer") };
    if ("shape" in step) note(step, event, "the answer");
  },
};

/**
 * What a question is about: a step, or the search for the cause of a complaint.
 *
 * @param {CardState} card
 * @param {CardEvent} event
 */
function askedOf(card, event) {
  return card.faults.get(String(event.value.fault ?? "")) ?? stepOf(card, event);
}
