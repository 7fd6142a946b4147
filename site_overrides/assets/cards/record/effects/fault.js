// What the search for a cause leaves on a card: complaints, results of checks, answers of calculators.

import { mark, text } from "./mark.js";

/** @import { Calculation, CardEvent, CardState, CheckResult, FaultState } from "../../types.js" */

/** @type {readonly string[]} */
export const RESULTS = ["good", "bad", "not done"];

/** @type {Record<string, (card: CardState, event: CardEvent) => void>} */
export const FAULT_EFFECTS = {
  complaint(card, event) {
    const fault = text(event, "fault");
    if (fault === "" || card.faults.has(fault)) return; // of two phones the first took it up
    card.faults.set(fault, newFault(fault, text(event, "complaint"), event));
  },
  result(card, event) {
    const fault = card.faults.get(text(event, "fault"));
    const result = /** @type {CheckResult["result"]} */ (text(event, "result"));
    if (!fault || !RESULTS.includes(result)) return;
    const { name = "", minutes = 0, note = "" } = event.value;
    const told = { name: String(name), minutes: Number(minutes) || 0, note: String(note) };
    fault.results.set(text(event, "check"), { mark: mark(event), result, ...told });
  },
  calculation(card, event) {
    const [name, summary, from] = ["name", "summary", "from"].map((one) => text(event, one));
    card.calculations.push({ ...answered(event, event.value), name, summary, from, isOfReading: false });
  },
};

/**
 * @param {string} id
 * @param {string} complaint
 * @param {CardEvent} event
 * @returns {FaultState}
 */
export function newFault(id, complaint, event) {
  return { id, taken: mark(event), complaint, results: new Map(), question: null, answer: null };
}

/**
 * What the calculator of a reading made of its entries; null where the reading does not say.
 *
 * @param {CardEvent} event
 * @returns {Calculation|null}
 */
export function answerIn(event) {
  const answer = /** @type {any} */ (event.value.answer);
  if (typeof answer?.pattern !== "string" || !Array.isArray(answer.rivals)) return null;
  const from = String(event.value.from ?? "");
  return { ...answered(event, answer), name: "", summary: "", from, isOfReading: true };
}

/**
 * @param {CardEvent} event
 * @param {Record<string, any>} value
 */
function answered(event, { calculator, pattern, rivals }) {
  return { mark: mark(event), calculator: String(calculator), pattern: String(pattern), rivals: rivals.map(String) };
}
