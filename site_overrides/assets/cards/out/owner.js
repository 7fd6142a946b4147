// What the owner is told: his own words, what was found, what was done, what is left, in plain words.

import { URGENCY_WORDS } from "../kit/finding-words.js";
import { readingWords } from "../kit/reading-words.js";
import { URGENCIES } from "../record/effects/finding.js";
import { steps } from "../record/fold.js";
import { fluidSentences } from "./fluid-words.js";

/** @import { CardState, FindingState, Job } from "../types.js" */

const WORDS = {
  advised: "We advise you to have it done. It is not done yet.",
  declined: "You decided against it for now.",
};

/** @typedef {{name: string, before: string, after: string}} Measured */

/**
 * @param {CardState} card
 */
export function ownerTold(card) {
  const byWeight = URGENCIES.flatMap((urgency) => card.findings.filter((one) => one.urgency === urgency));
  const isDone = (/** @type {FindingState} */ { decision }) => decision?.decision === "done";
  const open = byWeight.filter((one) => !isDone(one));
  return {
    right: byWeight.filter(isDone),
    open,
    stop: open.filter(({ urgency }) => urgency === "before driving"),
    work: card.jobs.filter((job) => job.steps.some(({ done }) => done)).map(({ text }) => text.title),
    measured: card.jobs.flatMap(measured),
    fluid: fluidSentences(card)[0] ?? "",
    people: people(card),
  };
}

/**
 * How soon something that was found wants seeing to and what became of it, as it is said to the owner.
 * The note beside the decision is the shop's own.
 *
 * @param {FindingState} finding
 */
export function whatBecame({ urgency, decision }) {
  if (decision?.decision === "done") return "Put right on this visit.";
  const undecided = urgency === "to know" ? "" : "Not decided yet.";
  const said = decision ? WORDS[decision.decision] : undecided;
  return `${URGENCY_WORDS[urgency]}. ${said}`.trim();
}

/**
 * Readings that were taken as found and as left, both with a number.
 *
 * @param {Job} job
 * @returns {Measured[]}
 */
function measured(job) {
  const all = job.steps.flatMap(({ readings }) => readings).filter(({ taken }) => typeof taken?.number === "number");
  return all.flatMap((found) => {
    const left = all.find(({ asked, when }) => asked.id === found.asked.id && when === "as left");
    if (found.when !== "as found" || !left) return [];
    return [{ name: found.asked.name, before: readingWords(found), after: readingWords(left) }];
  });
}

/** @param {CardState} card */
function people(card) {
  const all = steps(card);
  const names = (/** @type {({who: string}|null)[]} */ marks) => [...new Set(marks.flatMap((mark) => mark?.who ?? []))];
  return { worked: names(all.map(({ done }) => done)), checked: names(all.map(({ check }) => check)) };
}
