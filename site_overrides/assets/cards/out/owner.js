// What the owner is told: his own words, what was found, what was done, what is left, in plain words.

import { readingWords } from "../kit/reading-words.js";
import { URGENCIES } from "../record/effects/finding.js";
import { steps } from "../record/fold.js";
import { fluidSentences } from "./fluid-words.js";

/** @import { CardState, FindingState, Job, Urgency } from "../types.js" */

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
    open: groups(open),
    stop: open.filter(({ urgency }) => urgency === "before driving"),
    work: card.jobs.filter((job) => job.steps.some(({ done }) => done)).map(({ text }) => text.title),
    measured: card.jobs.flatMap(measured),
    fluid: fluidSentences(card)[0] ?? "",
    people: people(card),
  };
}

/**
 * What became of a finding, as it is said to the owner.
 *
 * @param {FindingState} finding
 */
export function decisionSentence({ decision }) {
  if (!decision) return "Not decided yet.";
  const words = {
    done: "Put right on this visit.",
    advised: "We advise to have it done. It is not done yet.",
    declined: "You decided against it for now.",
  };
  return [words[decision.decision], decision.note].filter(Boolean).join(" ");
}

/**
 * @param {FindingState[]} findings in the order of their weight
 * @returns {{urgency: Urgency, findings: FindingState[]}[]} none that is empty
 */
function groups(findings) {
  const all = URGENCIES.map((urgency) => ({ urgency, findings: findings.filter((one) => one.urgency === urgency) }));
  return all.filter((group) => group.findings.length > 0);
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
