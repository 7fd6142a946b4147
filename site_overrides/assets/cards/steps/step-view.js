// The step in hand: its text as the card took it, its readings, and what was said and found about it.

import { timeWords } from "../app.js";
import { el } from "../kit/dom.js";
import { canonical } from "../record/canonical.js";
import { pastView } from "../renew/past.js";
import { findingLine, findingsOf } from "./findings/finding-line.js";
import { photoButton } from "./photos/photo-button.js";
import { photoStrip } from "./photos/photo-strip.js";
import { readingView } from "./reading-view.js";
import { calculatorLine, stepWords } from "./step-words.js";

/** @import { CardState, Job, Mark, ReadingState, StepState } from "../types.js" */
/** @import { Entry } from "./reading-form.js" */
/** @import { WorkView } from "./work-view.js" */

export class StepView {
  /** @param {WorkView} view */
  constructor(view) {
    this.view = view;
    /** Entries that are begun outlive that the step is drawn anew. @type {Map<string, HTMLElement>} */
    this.kept = new Map();
  }

  /**
   * @param {StepState} step
   * @returns {Node[]}
   */
  contents(step) {
    const { app, session, card, frame } = this.view;
    const job = this.jobOf(step);
    const calculators = calculatorLine(card, job, step);
    const past = pastView(job, saidLines);
    const findings = findingsOf(card.findings, step).map((finding) => findingLine(finding));
    return [
      el("p", { class: "uh-card__from" }, el("a", { href: `#card/${card.id}/jobs` }, job.text.title), ...faultWay(card)),
      el("h2", { class: "uh-card__title", tabindex: -1 }, stepNumber(job, step)),
      stepWords(card, step, this.readings(step)),
      ...(calculators ? [calculators] : []),
      ...saidLines(step).map((line) => el("p", { class: "uh-card__said" }, line)),
      ...(findings.length > 0 ? [el("ul", { class: "uh-findings" }, ...findings)] : []),
      ...photoStrip(app, session, step.photos, subjectOf(step)),
      ...(past ? [past] : []),
      frame.place,
      ...(card.closed ? [] : [this.also(step)]),
    ];
  }

  /**
   * Readings that stand beside those of the step, from wherever they were taken.
   *
   * @param {StepState} step
   */
  readingsBeside(step) {
    const own = new Set(step.readings.map(({ asked }) => asked.id));
    const all = own.size > 0 ? this.jobOf(step).steps.flatMap(({ readings }) => readings) : [];
    return all.filter(({ asked }) => own.has(asked.id)).map(({ key, taken }) => [key, taken]);
  }

  /**
   * @private
   * @param {StepState} step
   */
  readings(step) {
    const { card, deeds } = this.view;
    const before = this.kept;
    this.kept = new Map();
    return step.readings.map((reading) => {
      const job = this.jobOf(step);
      const record = (/** @type {Entry} */ entry) => void deeds.takeReading(step, reading, entry);
      const name = canonical([step.key, reading.key, this.readingsBeside(step), card.closed]);
      const node = before.get(name) ?? readingView(reading, job, card.closed ? null : record);
      this.kept.set(name, node);
      return node;
    });
  }

  /**
   * What else can be done here: a photo, a finding, and taking the last entry back.
   *
   * @private
   * @param {StepState} step
   */
  also(step) {
    const { app, session, deeds } = this.view;
    const plain = { class: "uh-button uh-button--plain", type: "button" };
    const { last } = step;
    return el(
      "div",
      { class: "uh-card__also" },
      photoButton(app, session, subjectOf(step), this.view),
      el("button", { ...plain, onclick: () => deeds.askFinding() }, "Finding"),
      last
        ? el("button", { ...plain, "aria-label": `Undo ${last.what}`, onclick: () => void deeds.undo(last) }, "Undo")
        : null,
    );
  }

  /**
   * @private
   * @param {StepState} step
   * @returns {Job}
   */
  jobOf(step) {
    const { jobs } = this.view.card;
    return jobs.find((one) => one.id === step.job) ?? jobs[0];
  }
}

/** A step as the subject of a photo. @param {StepState} step */
export function subjectOf({ job, text }) {
  return { job, step: text.number, finding: "" };
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

/**
 * Back to the search for the cause, where the card has a complaint of the manual.
 *
 * @param {CardState} card
 */
function faultWay(card) {
  return card.faults.size > 0 ? [" · ", el("a", { href: `#card/${card.id}/fault` }, "Fault finding")] : [];
}
