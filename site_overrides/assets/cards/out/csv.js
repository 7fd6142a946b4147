// The readings and results of a card as a table for spreadsheets: RFC 4180, in UTF-8 with its mark in front.

import { originWords } from "../fault/words.js";
import { steps } from "../record/fold.js";

/** @import { Calculation, CardState, FaultState, Job, ReadingState, StepState } from "../types.js" */
/** @import { Counted } from "../fault/counted.js" */

/** @typedef {(card: CardState, fault: FaultState) => Counted[]} ResultsOf the results of a complaint's checks */

const COLUMNS = [
  "card", "vehicle", "procedure", "step", "reading", "when", "value", "unit", "low", "high", "outside", "reason",
  "who", "at",
]; // prettier-ignore

const MARK = "\uFEFF"; // without it some spreadsheets read UTF-8 as something else
const PLAIN_NUMBER = /^[-+]?\d+(\.\d+)?$/;
const FORMULA = /^[=+\-@＝＋－＠\t\r\n]/; // OWASP, "CSV Injection": a cell that begins so may be run
const SPECIAL = /[",\r\n]|^\s|\s$/;

/**
 * Every reading that was taken, one a line, in the order of the steps; those of an earlier revision's
 * steps follow each procedure. Then the results of checks, and the answers that were kept.
 *
 * @param {CardState} card
 * @param {ResultsOf} resultsOf
 */
export function readingsCsv(card, resultsOf) {
  const rows = card.jobs.flatMap((job) => [...job.steps, ...job.past].flatMap((step) => rowsOf(card, job, step)));
  const results = [...card.faults.values()].flatMap((fault) => resultsOf(card, fault).map((one) => resultRow(card, fault, one)));
  return csv([COLUMNS, ...rows, ...results, ...kept(card).map((one) => calculationRow(card, one))]);
}

/**
 * How many readings, results and answers a card has.
 *
 * @param {CardState} card
 * @param {ResultsOf} resultsOf
 */
export function readingCount(card, resultsOf) {
  const results = [...card.faults.values()].flatMap((fault) => resultsOf(card, fault));
  const all = [...steps(card), ...card.jobs.flatMap(({ past }) => past)];
  return all.flatMap(({ readings }) => readings).filter(({ taken }) => taken).length + results.length + kept(card).length;
}

/**
 * @param {string[][]} rows
 * @returns {string} every line ends in CR LF
 */
export function csv(rows) {
  return MARK + rows.map((row) => `${row.map((text) => quoted(harmless(text))).join(",")}\r\n`).join("");
}

/**
 * A text that no spreadsheet takes for a formula.
 *
 * @param {string} text
 */
function harmless(text) {
  return FORMULA.test(text) && !PLAIN_NUMBER.test(text) ? `'${text}` : text;
}

/** @param {string} text */
function quoted(text) {
  return SPECIAL.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/**
 * @param {CardState} card
 * @param {Job} job
 * @param {StepState} step
 * @returns {string[][]}
 */
function rowsOf(card, job, step) {
  return step.readings.flatMap((reading) => {
    const { asked, when, taken } = reading;
    if (!taken) return [];
    const limits = [asked.low, asked.high].map((limit) => (limit === null ? "" : decimal(limit)));
    const about = [card.id, card.vehicle.identification, job.text.title, String(step.text.number), asked.name, when];
    const said = [outside(reading), taken.reason, taken.mark.who, taken.mark.at];
    return [[...about, value(taken), asked.unit_words, ...limits, ...said]];
  });
}

/**
 * Answers that were kept by themselves; those of readings stand with them.
 *
 * @param {CardState} card
 */
function kept({ calculations }) {
  return calculations.filter(({ isOfReading }) => !isOfReading);
}

/**
 * @param {CardState} card
 * @param {FaultState} fault
 * @param {Counted} counted
 * @returns {string[]}
 */
function resultRow(card, { complaint }, counted) {
  const { name, result, mark, said } = counted;
  const about = [card.id, card.vehicle.identification, complaint, "", name, "result of a check", result];
  return [...about, "", "", "", "", originWords(counted) || (said?.note ?? ""), mark.who, mark.at];
}

/**
 * @param {CardState} card
 * @param {Calculation} calculation
 * @returns {string[]}
 */
function calculationRow(card, { calculator, name, pattern, rivals, summary, mark }) {
  const about = [card.id, card.vehicle.identification, name || calculator, "", "Pattern", "answer of a calculator"];
  return [...about, [pattern, ...rivals].join(" or "), "", "", "", "", summary, mark.who, mark.at];
}

/**
 * The number as it was typed, a fraction as its decimal, "" for a reading that could not be read.
 *
 * @param {NonNullable<ReadingState["taken"]>} taken
 */
function value({ written, number }) {
  if (number === null) return "";
  const typed = written.replace("−", "-");
  return PLAIN_NUMBER.test(typed) ? typed : decimal(number);
}

/**
 * A decimal point and no exponent; finer than any reading of a shop.
 *
 * @param {number} number
 */
function decimal(number) {
  return number.toFixed(6).replace(/\.?0+$/, "");
}

/**
 * "" where there is no number or no limit to hold it against.
 *
 * @param {ReadingState} reading
 */
function outside({ asked, taken }) {
  const unknown = taken?.number === null || (asked.low === null && asked.high === null);
  if (unknown) return "";
  return taken?.outside ? "yes" : "no";
}
