// Fault finding on paper: the complaint, the checks in their order with what they told, the cause.

import { timeWords } from "../app.js";
import { countedResults } from "../fault/counted.js";
import { RESULT_WORDS, minutesWords, originWords } from "../fault/words.js";
import { el } from "../kit/dom.js";
import { knownFault, readFault } from "../plan/manual.js";

/** @import { CardState, FaultState } from "../types.js" */
/** @import { Counted } from "../fault/counted.js" */

/**
 * Reads what the manual says of a card's complaints, so that results which follow from readings stand on
 * the sheet too. Without it those that people gave are there.
 *
 * @param {CardState} card
 */
export async function prepareFaults(card) {
  await Promise.all([...card.faults.keys()].map((id) => readFault(id).catch(() => null)));
}

/**
 * @param {CardState} card
 * @param {FaultState} fault
 */
export function resultsOf(card, fault) {
  return countedResults(card, fault, knownFault(fault.id)?.by_family[card.vehicle.family] ?? null);
}

/**
 * @param {CardState} card
 * @returns {HTMLElement[]}
 */
export function faultSections(card) {
  return [...card.faults.values()].map((fault) => {
    const lines = resultsOf(card, fault).map(checkLine);
    return el(
      "div",
      { class: "uh-sheet__fault" },
      el("blockquote", {}, fault.complaint),
      lines.length > 0 ? el("ol", {}, ...lines) : el("p", {}, "No check is made yet."),
      el("p", {}, el("strong", {}, "Cause: "), causeWords(card, fault)),
      ...saidOf(fault).map((words) => el("p", { class: "uh-card__sign" }, words)),
    );
  });
}

/**
 * The causes that were named for a complaint, each with how likely it is.
 *
 * @param {CardState} card
 * @param {FaultState} fault
 */
export function causeWords(card, fault) {
  const causes = card.findings.flatMap(({ cause }) => (cause?.fault === fault.id ? [cause] : []));
  const named = causes.map(({ name, likely }) => `${name}${likely && `, ${likely} by what the checks told`}`);
  return named.length > 0 ? `${named.join("; ")}.` : "none is named yet.";
}

/** @param {Counted} counted */
function checkLine(counted) {
  const { name, minutes, result, said, mark } = counted;
  const told = [minutesWords(minutes), originWords(counted), said?.note, `${mark.who}, ${timeWords(mark.at)}`];
  const words = `${told.filter(Boolean).join("; ")}.`;
  return el("li", {}, `${name}: `, el("strong", {}, RESULT_WORDS[result]), ". ", el("span", { class: "uh-card__sign" }, words));
}

/** @param {FaultState} fault */
function saidOf({ question, answer }) {
  return [
    ...(question ? [`Asked by ${question.who}: ${question.question}`] : []),
    ...(answer ? [`Answered by ${answer.who}: ${answer.answer}`] : []),
  ];
}
