// What somebody should have seen before a card is closed: each thing with the way to it.

import { readingName, readingRemark, readingWords } from "../kit/reading-words.js";
import { steps } from "../record/fold.js";
import { leftOut, outsideReadings, stillOff } from "../record/review.js";
import { fluidSentences } from "./fluid-words.js";

/** @import { StillOff } from "../record/review.js" */
/** @import { CardState, FaultState, FindingState, PartAsked, Photo, ReadingState, StepState } from "../types.js" */

const OUTSIDE = "Readings outside their limits, or not readable";

/** @typedef {{href: string, words: string}} Way */
/** @typedef {{words: string, ways: Way[]}} Line */
/** @typedef {{title: string, lines: Line[]}} Look */

/**
 * Only what there is something to say about.
 *
 * @param {CardState} card
 * @param {Set<string>} pictures ids of the photos whose pictures are on this phone
 * @returns {Look[]}
 */
export function lastLook(card, pictures) {
  const looks = [
    { title: "Still off", lines: stillOff(card).map((off) => offLine(card, off)) },
    { title: OUTSIDE, lines: outsideReadings(card).map((one) => readingLine(card, one)) },
    { title: "Steps left out", lines: leftOut(card).map((step) => leftOutLine(card, step)) },
    { title: "Look-alike parts not identified", lines: unidentified(card).map((part) => partLine(card, part)) },
    { title: "Complaints without a cause", lines: unnamed(card).map((fault) => faultLine(card, fault)) },
    { title: "Findings without a decision", lines: undecided(card).map((one) => findingLine(card, one)) },
    { title: "Fluid", lines: fluidSentences(card).map((words) => ({ words, ways: [] })) },
    { title: "Photos", lines: photoLines(card, pictures) },
  ];
  return looks.filter(({ lines }) => lines.length > 0);
}

/**
 * Parts with look-alikes that nobody has told apart, on procedures of which some step was done.
 *
 * @param {CardState} card
 */
export function unidentified(card) {
  const worked = card.jobs.filter((job) => job.steps.some(({ done }) => done));
  const parts = worked.flatMap(({ text }) => text.parts).filter(({ variants }) => variants.length > 0);
  const once = [...new Map(parts.map((part) => [part.id, part])).values()];
  return once.filter(({ id }) => !card.identified.has(id));
}

/**
 * Every photo of a card, those of steps first.
 *
 * @param {CardState} card
 * @returns {Photo[]}
 */
export function photosOf(card) {
  const all = [...steps(card), ...card.jobs.flatMap(({ past }) => past), ...card.findings];
  return all.flatMap(({ photos }) => photos);
}

/**
 * @param {CardState} card
 * @param {StepState} step
 */
export function stepWay(card, step) {
  const title = card.jobs.find(({ id }) => id === step.job)?.text.title;
  const at = steps(card).indexOf(step) + 1;
  return { href: `#card/${card.id}/${at}`, words: `${title}, step ${step.text.number}: ${step.text.text}` };
}

/**
 * @param {CardState} card
 * @param {StillOff} off
 */
function offLine(card, { thing, step, waiting }) {
  const taken = stepWay(card, step);
  const ways = waiting.map((one) => stepWay(card, one));
  const back = ways.map(({ href, words }) => ({ href, words: `To put it back on: ${words}` }));
  const none = back.length === 0 ? " No step on this card puts it back on." : "";
  return { words: `${capital(thing)}.${none}`, ways: [{ ...taken, words: `Taken off: ${taken.words}` }, ...back] };
}

/**
 * @param {CardState} card
 * @param {ReadingState} reading
 */
function readingLine(card, reading) {
  const step = steps(card).find(({ readings }) => readings.includes(reading));
  const ways = step ? [stepWay(card, step)] : [];
  return { words: `${readingName(reading)}: ${readingWords(reading)}. ${readingRemark(reading)}`, ways };
}

/**
 * @param {CardState} card
 * @param {StepState} step
 */
function leftOutLine(card, step) {
  const { who = "", reason = "" } = step.notNeeded ?? {};
  return { words: `Not needed, by ${who}: ${reason}`, ways: [stepWay(card, step)] };
}

/**
 * @param {CardState} card
 * @param {PartAsked} part
 */
function partLine(card, part) {
  return { words: part.name, ways: [{ href: `#card/${card.id}/fetch`, words: "Identify it" }] };
}

/**
 * Complaints for which nobody has named a cause.
 *
 * @param {CardState} card
 */
function unnamed(card) {
  const named = new Set(card.findings.map(({ cause }) => cause?.fault));
  return [...card.faults.values()].filter(({ id }) => !named.has(id));
}

/**
 * @param {CardState} card
 * @param {FaultState} fault
 */
function faultLine(card, { id, complaint }) {
  return { words: complaint, ways: [{ href: `#card/${card.id}/fault/${id}`, words: "Fault finding" }] };
}

/**
 * @param {CardState} card
 */
function undecided(card) {
  return card.findings.filter(({ decision }) => !decision);
}

/**
 * @param {CardState} card
 * @param {FindingState} finding
 */
function findingLine(card, finding) {
  return { words: finding.what, ways: [{ href: `#card/${card.id}/findings`, words: "Decide" }] };
}

/**
 * @param {CardState} card
 * @param {Set<string>} pictures
 */
function photoLines(card, pictures) {
  const missing = photosOf(card).filter(({ id }) => !pictures.has(id)).length;
  if (missing === 0) return [];
  const one = "The picture of 1 photo is not on this phone. It is on the one that took it.";
  const more = `The pictures of ${missing} photos are not on this phone. They are on those that took them.`;
  return [{ words: missing === 1 ? one : more, ways: [] }];
}

/** @param {string} thing */
export function capital(thing) {
  return thing.slice(0, 1).toUpperCase() + thing.slice(1);
}
