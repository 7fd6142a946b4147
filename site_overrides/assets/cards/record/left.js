// What is still open on a card: for the line at the top, and for the question whether it may be closed.

import { steps } from "./fold.js";
import { samePerson } from "./people.js";

/** @import { CardState, Job, StepState } from "../types.js" */

/**
 * Why a step keeps the card open, one sentence each; none where it does not.
 *
 * @param {StepState} step
 * @returns {string[]}
 */
export function openReasons(step) {
  const { shape, text } = step;
  if (shape === "not-needed") return [];
  if (shape === "handed-back") return [`Handed back: ${step.question?.question}`];
  const missing = missingReadings(step).map((name) => `No reading yet: ${name}.`);
  if (shape === "todo") return [...missing, "Not done, and no reason given."];
  const wantsCheck = text.wants_second_check && shape !== "checked";
  return wantsCheck ? [...missing, "Wants a second check by other initials."] : missing;
}

/**
 * Names of the readings that a step still wants.
 *
 * @param {StepState} step
 * @returns {string[]}
 */
export function missingReadings(step) {
  const missing = step.readings.filter((reading) => !reading.taken);
  return missing.map((reading) => `${reading.asked.name}, ${reading.when}`);
}

/**
 * Everything that keeps a card open, in the order of its steps.
 *
 * @param {CardState} card
 * @returns {{step: StepState, reasons: string[]}[]}
 */
export function openSteps(card) {
  const all = steps(card).map((step) => ({ step, reasons: openReasons(step) }));
  return all.filter(({ reasons }) => reasons.length > 0);
}

/**
 * Complaints whose search for a cause waits for the senior tech's answer.
 *
 * @param {CardState} card
 */
export function askedFaults(card) {
  return [...card.faults.values()].filter(({ question, answer }) => question && !answer);
}

/**
 * Where the work on a procedure goes on: its first step that is open, or else its first. A position
 * among all steps of the card, from 1.
 *
 * @param {CardState} card
 * @param {Job} job
 */
export function placeOf(card, job) {
  const open = job.steps.find((step) => openReasons(step).length > 0) ?? job.steps[0];
  return Math.max(steps(card).indexOf(open) + 1, 1);
}

/**
 * Position of the next step that keeps the card open, from the start again after the last; where
 * none does, the position it began from.
 *
 * @param {StepState[]} all
 * @param {number} from -1 for before the first
 * @returns {number}
 */
export function nextOpen(all, from) {
  const order = all.map((_step, index) => (from + 1 + index) % all.length);
  return order.find((index) => openReasons(all[index]).length > 0) ?? Math.max(from, 0);
}

/**
 * What is left, in words, for the line at the top.
 *
 * @param {CardState} card
 * @returns {string}
 */
export function leftInWords(card) {
  if (card.closed) return `Closed by ${card.closed.who}.`;
  const all = steps(card);
  const asked = askedFaults(card).length;
  if (all.length === 0 && asked === 0) return card.faults.size > 0 ? "Find the cause first." : "No procedures yet. Add one.";
  const left = leftOf(all, asked);
  return left === "" ? "Nothing is left. Close the card." : `Left: ${left}.`;
}

/**
 * "3 of 12 steps, 1 second check", or "" where nothing is left of these.
 *
 * @param {StepState[]} all
 * @param {number} [more] questions that are open beside those of these steps
 */
export function leftOf(all, more = 0) {
  const todo = all.filter((step) => step.shape === "todo").length;
  const asked = all.filter((step) => step.shape === "handed-back").length + more;
  const unchecked = all.filter((step) => step.text.wants_second_check && step.shape === "stored");
  const done = all.filter((step) => step.shape === "stored" || step.shape === "checked");
  const unread = done.flatMap(missingReadings).length;
  const parts = [
    todo && `${todo} of ${counted(all.length, "step")}`,
    unread && counted(unread, "reading"),
    unchecked.length && counted(unchecked.length, "second check"),
    asked && counted(asked, "question"),
  ];
  return parts.filter(Boolean).join(", ");
}

/**
 * Why these initials cannot be the second check of a step, or "".
 *
 * @param {StepState} step
 * @param {string} initials
 */
export function checkRefused(step, initials) {
  if (!step.done || !samePerson(step.done.who, initials)) return "";
  return `${step.done.who} ticked this step. The second check wants somebody else's initials.`;
}

/**
 * @param {number} count
 * @param {string} thing
 * @param {string} [things] where it is not the same with an s
 */
export function counted(count, thing, things = `${thing}s`) {
  return `${count} ${count === 1 ? thing : things}`;
}

/**
 * "Steps 1 to 4, 6 and 9" of numbers in order; "" of none.
 *
 * @param {number[]} numbers
 * @returns {string}
 */
export function ranges(numbers) {
  /** @type {number[][]} */
  const runs = [];
  for (const number of numbers) {
    const run = runs.at(-1);
    if (run?.at(-1) === number - 1) run.push(number);
    else runs.push([number]);
  }
  const words = runs.flatMap((run) => (run.length > 2 ? [`${run[0]} to ${run.at(-1)}`] : run.map(String)));
  const last = words.pop();
  if (last === undefined) return "";
  const listed = words.length > 0 ? `${words.join(", ")} and ${last}` : last;
  return `${numbers.length === 1 ? "Step" : "Steps"} ${listed}`;
}
