// The step in hand: its text as the card took it, its readings, and what was said about it.

import { timeWords } from "../app.js";
import { el } from "../kit/dom.js";
import { calculatorAddress, isCalculator } from "../link/to-calculator.js";
import { siteRoot, stepBase } from "../plan/manual.js";
import { steps } from "../record/fold.js";
import { readingView } from "./reading-view.js";
import { safeFragment } from "../kit/safe-html.js";
import { smallShape } from "../kit/shapes.js";

/** @import { Entry } from "./reading-form.js" */
/** @import { CardState, Job, Mark, ReadingState, Shape, StepState } from "../types.js" */

/**
 * @param {CardState} card
 * @param {Job} job
 * @param {StepState} step
 * @param {((reading: ReadingState, entry: Entry) => void)|null} record null where the card is closed
 * @param {HTMLElement} place for what is asked about this step
 * @returns {Node[]}
 */
export function stepView(card, job, step, record, place) {
  const readings = step.readings.map((reading) =>
    readingView(reading, record && ((entry) => record(reading, entry))),
  );
  return [
    el("p", { class: "uh-card__from" }, job.text.title),
    el("h2", { class: "uh-card__title", tabindex: -1 }, stepNumber(job, step)),
    stepWords(card, step, readings),
    ...saidLines(step).map((line) => el("p", { class: "uh-card__said" }, line)),
    place,
  ];
}

/**
 * The step's text, with the entries in the place of the sentences that ask for readings, and with
 * calculators that know the vehicle.
 *
 * @param {CardState} card
 * @param {StepState} step
 * @param {Node[]} readings
 */
function stepWords(card, step, readings) {
  const words = el("div", { class: "uh-card__do" }, safeFragment(step.text.html, stepBase()));
  const [asked, ...rest] = words.querySelectorAll(".uh-step__reading");
  if (asked) asked.replaceWith(...readings);
  else words.append(...readings);
  for (const sentence of rest) sentence.remove();
  // A link to the reading's own sentence would lead away from the entry beside it.
  for (const link of words.querySelectorAll('a[href*="#reading-"]')) link.replaceWith(...link.childNodes);
  const at = steps(card).indexOf(step) + 1;
  for (const link of words.querySelectorAll("a")) {
    if (isCalculator(link.href, siteRoot())) link.href = calculatorAddress(link.href, card, at);
  }
  return words;
}

/**
 * A neighbour of the step in hand, one line that leads to it.
 *
 * @param {StepState} step
 * @param {Shape} shape
 * @param {() => void} go
 */
export function stepRow(step, shape, go) {
  return el(
    "button",
    { class: "uh-card__row", type: "button", onclick: go },
    smallShape(step, shape),
    el("span", {}, `${step.text.number}. ${step.text.text}`),
  );
}

/**
 * @param {Job} job
 * @param {StepState} step
 */
export function stepNumber(job, step) {
  return `Step ${step.text.number} of ${job.steps.length}`;
}

/**
 * Who did what about a step and what they said, one sentence each.
 *
 * @param {StepState} step
 * @returns {string[]}
 */
export function saidLines(step) {
  const { done, check, notNeeded, question, answer } = step;
  return [
    done && `Done by ${signed(done)}.`,
    check && `Second check by ${signed(check)}.`,
    notNeeded && `Not needed, by ${signed(notNeeded)}: ${notNeeded.reason}`,
    question && `Asked by ${signed(question)}: ${question.question}`,
    answer && `Answered by ${signed(answer)}: ${answer.answer}`,
  ].filter((line) => typeof line === "string");
}

/** @param {Mark} mark */
function signed({ who, at }) {
  return `${who}, ${timeWords(at)}`;
}
