// One procedure on the job sheet: its steps with squares to tick, boxes to write in, and what was said.

import { timeWords } from "../app.js";
import { el } from "../kit/dom.js";
import { photoImage } from "../kit/photo.js";
import { readingName, readingRemark, readingWords } from "../kit/reading-words.js";
import { smallShape } from "../kit/shapes.js";
import { steps } from "../record/fold.js";
import { saidLines } from "../steps/step-view.js";

/** @import { CardState, Job, ReadingState, Renewal, StepState } from "../types.js" */

/**
 * @param {CardState} card
 * @param {Job} job
 */
export function jobSection(card, job) {
  const all = steps(card);
  const lines = job.steps.map((step) => line(step, `#card/${card.id}/${all.indexOf(step) + 1}`));
  const past = job.past.map((step) => line(step, ""));
  return el(
    "section",
    { class: "uh-card__job" },
    el("h3", {}, job.text.title),
    el("p", { class: "uh-card__sign" }, revisionWords(job)),
    ...job.renewals.map((one) => el("p", { class: "uh-card__sign" }, renewalWords(one))),
    el("ol", {}, ...lines),
    ...(past.length > 0 ? [el("h4", {}, "From the earlier text"), el("ul", {}, ...past)] : []),
  );
}

/** @param {Renewal} renewal */
function renewalWords({ mark, words }) {
  return `Newer revision taken by ${mark.who}, ${timeWords(mark.at)}. ${words.join("; ")}`;
}

/** @param {Job} job */
function revisionWords({ text }) {
  const since = text.date && `of ${text.date}`;
  const author = text.author && `by ${text.author}`;
  return `${["Revision", text.revision, since, author].filter(Boolean).join(" ")}.`;
}

/**
 * @param {StepState} step
 * @param {string} href "" for a step that is no longer worked on
 */
function line(step, href) {
  const torques = step.text.torques.map(({ value }) => boxed(value));
  const wanted = step.text.wants_second_check && !step.check && step.shape !== "not-needed";
  const words = `${step.text.number}. ${step.text.text}`;
  const photos = step.photos.map(photoImage);
  return el(
    "li",
    { class: "uh-card__line" },
    smallShape(step, step.shape),
    el(
      "div",
      { class: "uh-card__words" },
      href ? el("a", { href }, words) : el("span", {}, words),
      ...torques,
      ...step.readings.map(readingLine),
      ...saidLines(step).map((said) => el("span", { class: "uh-card__sign" }, said)),
      wanted && el("span", { class: "uh-card__sign" }, "Second check: ", space()),
      photos.length > 0 && el("div", { class: "uh-sheet__photos" }, ...photos),
    ),
  );
}

/** @param {ReadingState} reading */
function readingLine(reading) {
  const { asked } = reading;
  const taken = readingWords(reading);
  const limits = asked.limits_text && `Good: ${asked.limits_text}.`;
  return el(
    "span",
    { class: "uh-card__sign" },
    `${readingName(reading)} `,
    taken ? boxed(taken) : el("span", { class: "uh-card__value" }, space(), ` ${asked.unit_words}`),
    ` ${readingRemark(reading) || limits}`,
  );
}

/** @param {string} words */
function boxed(words) {
  return el("span", { class: "uh-card__value" }, words);
}

/** Somewhere to write by hand. */
function space() {
  return el("span", { class: "uh-card__space" });
}
