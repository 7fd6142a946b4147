// The whole card on one sheet: on the screen to find a step, on paper as the job sheet.

import { cardName, timeWords } from "../app.js";
import { el } from "../kit/dom.js";
import { readingName, readingRemark, readingWords } from "../kit/reading-words.js";
import { steps } from "../record/fold.js";
import { leftInWords } from "../record/left.js";
import { smallShape } from "../kit/shapes.js";
import { saidLines } from "../work/step-view.js";

/** @import { App, View } from "../app.js" */
/** @import { Session } from "../record/session.js" */
/** @import { CardState, Job, ReadingState, StepState } from "../types.js" */

/**
 * @param {App} _app
 * @param {Session} session
 * @param {CardState} card
 * @returns {View}
 */
export function sheetView(_app, session, card) {
  const print = { class: "uh-button", type: "button", onclick: () => window.print() };
  const page = el("div", {}, sheet(card));
  const node = el(
    "div",
    {},
    el(
      "p",
      { class: "uh-card__answers uh-screen-only" },
      el("a", { class: "uh-button uh-button--plain", href: `#card/${card.id}` }, "Back to the card"),
      el("button", print, "Print"),
    ),
    page,
  );
  const update = () => page.replaceChildren(sheet(session.state ?? card));
  return { node, update };
}

/** @param {CardState} card */
export function sheet(card) {
  const all = steps(card);
  const { vehicle } = card;
  const facts = [
    ["Complaint", card.complaint],
    ["Tyre", vehicle.tyre || "not known"],
    ["Axle ratio", vehicle.axle || "not known"],
    ["Odometer", vehicle.odometer],
    ["Started", `${card.started.who}, ${timeWords(card.started.at)}`],
    ["Stands", leftInWords(card)],
  ];
  if (card.closed) facts.push(["Closed", `${card.closed.who}, ${timeWords(card.closed.at)}`]);
  if (card.unknown > 0) facts.push(["Note", newerWords(card.unknown)]);
  const rows = facts.map(([name, words]) => el("div", {}, el("dt", {}, name), el("dd", {}, words)));
  return el(
    "article",
    { class: "uh-card__sheet" },
    el("header", {}, el("h2", { tabindex: -1 }, cardName(card))),
    el("dl", { class: "uh-card__facts" }, ...rows),
    ...card.jobs.map((job) => jobSection(card, job, all)),
    foot(card),
  );
}

/** @param {number} count */
function newerWords(count) {
  return `${count} of the entries were made by a newer version of the manual. They are kept and not shown here.`;
}

/**
 * @param {CardState} card
 * @param {Job} job
 * @param {StepState[]} all
 */
function jobSection(card, job, all) {
  const lines = job.steps.map((step) =>
    line(step, `#card/${card.id}/${all.indexOf(step) + 1}`),
  );
  return el(
    "section",
    { class: "uh-card__job" },
    el("h3", {}, job.text.title),
    el("ol", {}, ...lines),
  );
}

/**
 * @param {StepState} step
 * @param {string} href
 */
function line(step, href) {
  const torques = step.text.torques.map(({ value }) => boxed(value));
  const check = step.text.wants_second_check && !step.check && step.shape !== "not-needed";
  return el(
    "li",
    { class: "uh-card__line" },
    smallShape(step, step.shape),
    el(
      "div",
      { class: "uh-card__words" },
      el("a", { href }, `${step.text.number}. ${step.text.text}`),
      ...torques,
      ...step.readings.map(readingLine),
      ...saidLines(step).map((words) => el("span", { class: "uh-card__sign" }, words)),
      check ? el("span", { class: "uh-card__sign" }, "Second check: ________________") : null,
    ),
  );
}

/** @param {ReadingState} reading */
function readingLine(reading) {
  const words = readingWords(reading) || `________ ${reading.asked.unit_words}`;
  const limits = reading.asked.limits_text && `good: ${reading.asked.limits_text}`;
  const remark = readingRemark(reading);
  return el(
    "span",
    { class: "uh-card__sign" },
    `${readingName(reading)} `,
    boxed(words),
    remark ? ` ${remark}` : limits && ` ${limits}`,
  );
}

/** @param {string} words */
function boxed(words) {
  return el("span", { class: "uh-card__value" }, words);
}

/**
 * The safety line is the page's own and follows below.
 *
 * @param {CardState} card
 */
function foot(card) {
  const revisions = card.jobs.map(({ text }) => `${text.title} ${text.revision}`).join(", ");
  const printed = `Written out ${timeWords(new Date().toISOString())}.`;
  return el(
    "footer",
    { class: "uh-card__foot" },
    el("p", {}, `${cardName(card)}. Revisions: ${revisions || "none"}. ${printed}`),
  );
}
