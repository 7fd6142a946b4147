// The lists of the job sheet that are about the whole card: what was found, what was read.

import { timeWords } from "../app.js";
import { el } from "../kit/dom.js";
import { DECISION_WORDS, URGENCY_WORDS } from "../kit/finding-words.js";
import { photoImage } from "../kit/photo.js";
import { readingWords } from "../kit/reading-words.js";
import { part } from "./paper-view.js";

/** @import { CardState, FindingState, Job, ReadingState } from "../types.js" */

const NOT_ASKED = "not asked";

/** @typedef {{name: string, limits: string, found: ReadingState|null, left: ReadingState|null}} Pair */

/**
 * @param {CardState} card
 * @param {FindingState} finding
 */
export function findingItem(card, finding) {
  const { what, urgency, decision, mark, photos } = finding;
  const title = card.jobs.find(({ id }) => id === finding.job)?.text.title;
  const where = title && ` ${title}${finding.step > 0 ? `, step ${finding.step}` : ""}.`;
  const decided = decision
    ? `${DECISION_WORDS[decision.decision]}, ${decision.who}, ${timeWords(decision.at)}. ${decision.note}`.trim()
    : "Not decided yet.";
  return el(
    "li",
    { class: "uh-card__line uh-sheet__finding" },
    el(
      "div",
      { class: "uh-card__words" },
      el("strong", {}, what),
      el("span", { class: "uh-card__sign" }, `${URGENCY_WORDS[urgency]}. Found by ${mark.who}.${where ?? ""}`),
      el("span", { class: "uh-card__sign" }, decided),
    ),
    photos.length > 0 && el("div", { class: "uh-sheet__photos" }, ...photos.map(photoImage)),
  );
}

/**
 * As found and as left side by side, each reading of a procedure once; null where none was taken.
 *
 * @param {CardState} card
 */
export function readingsTable(card) {
  const pairs = card.jobs.flatMap(pairsOf).filter(({ found, left }) => found?.taken || left?.taken);
  const rows = pairs.map(({ name, limits, found, left }) =>
    el(
      "tr",
      {},
      el("th", { scope: "row" }, name),
      cell("As found", words(found)),
      cell("As left", words(left)),
      cell("Good", limits || "not stated"),
      cell("By", by(found, left)),
    ),
  );
  const heads = ["Reading", "As found", "As left", "Good", "By"];
  const head = el("thead", {}, el("tr", {}, ...heads.map((name) => el("th", { scope: "col" }, name))));
  return part("Readings", rows.length > 0 && el("table", { class: "uh-readings" }, head, el("tbody", {}, ...rows)));
}

/**
 * @param {Job} job
 * @returns {Pair[]}
 */
function pairsOf(job) {
  const all = job.steps.flatMap(({ readings }) => readings);
  const ids = [...new Set(all.map(({ asked }) => asked.id))];
  return ids.map((id) => {
    const own = all.filter(({ asked }) => asked.id === id);
    const at = (/** @type {string} */ when) => own.find((reading) => reading.when === when) ?? null;
    const { name, limits_text: limits } = own[0].asked;
    return { name, limits, found: at("as found"), left: at("as left") };
  });
}

/**
 * @param {string} label
 * @param {string} text
 */
function cell(label, text) {
  return el("td", { "data-label": label, "data-none": text === NOT_ASKED }, text);
}

/** @param {ReadingState|null} reading */
function words(reading) {
  if (!reading) return NOT_ASKED;
  const { taken } = reading;
  const mark = taken?.outside ? " (outside)" : "";
  return `${readingWords(reading) || "not taken"}${mark}`;
}

/** @param {...(ReadingState|null)} readings */
function by(...readings) {
  return [...new Set(readings.flatMap((reading) => reading?.taken?.mark.who ?? []))].join(", ");
}
