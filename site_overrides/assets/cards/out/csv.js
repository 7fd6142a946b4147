// The readings of a card as a table for spreadsheets: RFC 4180, in UTF-8 with its mark in front.

import { steps } from "../record/fold.js";

/** @import { CardState, Job, ReadingState, StepState } from "../types.js" */

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
 * steps follow each procedure.
 *
 * @param {CardState} card
 */
export function readingsCsv(card) {
  const rows = card.jobs.flatMap((job) => [...job.steps, ...job.past].flatMap((step) => rowsOf(card, job, step)));
  return csv([COLUMNS, ...rows]);
}

/**
 * How many readings of a card have been taken.
 *
 * @param {CardState} card
 */
export function readingCount(card) {
  const all = [...steps(card), ...card.jobs.flatMap(({ past }) => past)];
  return all.flatMap(({ readings }) => readings).filter(({ taken }) => taken).length;
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
