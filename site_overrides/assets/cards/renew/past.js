// What was done by an earlier text of a procedure, on the working view.

import { el } from "../kit/dom.js";
import { readingName, readingRemark, readingWords } from "../kit/reading-words.js";

/** @import { Job, StepState } from "../types.js" */

/**
 * @param {Job} job
 * @param {(step: StepState) => string[]} said who did what about a step
 * @returns {HTMLElement|null}
 */
export function pastView(job, said) {
  if (job.past.length === 0) return null;
  const lines = job.past.map((step) => {
    const readings = step.readings.filter(({ taken }) => taken).map(readingLine);
    const words = [...readings, ...said(step)].map((line) => el("p", { class: "uh-card__said" }, line));
    return el("li", {}, `${step.text.number}. ${step.text.text}`, ...words);
  });
  return el("details", { class: "uh-more" }, el("summary", {}, "From the earlier text"), el("ul", {}, ...lines));
}

/** @param {import("../types.js").ReadingState} reading */
function readingLine(reading) {
  return `${readingName(reading)}: ${readingWords(reading)}. ${readingRemark(reading)}`.trim();
}
