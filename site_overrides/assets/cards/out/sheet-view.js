// The whole card on one sheet: on the screen to find a step, on paper as the job sheet.

import { cardName, notice, timeWords } from "../app.js";
import { el } from "../kit/dom.js";
import { canShare, fileName, save, share } from "../kit/hand-over.js";
import { leftInWords } from "../record/left.js";
import { showNews } from "../renew/news-lines.js";
import { stillOff } from "../record/review.js";
import { readingCount, readingsCsv } from "./csv.js";
import { fluidSentences } from "./fluid-words.js";
import { capital } from "./last-look.js";
import { facts, paperView, part } from "./paper-view.js";
import { faultSections, prepareFaults, resultsOf } from "./sheet-faults.js";
import { jobSection } from "./sheet-job.js";
import { findingItem, readingsTable } from "./sheet-lists.js";

/** @import { App, View } from "../app.js" */
/** @import { Session } from "../record/session.js" */
/** @import { CardState } from "../types.js" */

/**
 * @param {App} _app
 * @param {Session} session
 * @param {CardState} card
 * @returns {Promise<View>}
 */
export async function sheetView(_app, session, card) {
  await prepareFaults(card);
  const news = el("div", { class: "uh-card__news" });
  showNews(news, session, card);
  return paperView({ here: "sheet", session, card, draw: sheet, more: [news, csvButtons(session, card)] });
}

/** @param {CardState} card */
export function sheet(card) {
  const off = stillOff(card).map(({ thing, from }) => el("li", {}, `${capital(thing)}, taken off by “${from}”`));
  const fluid = fluidSentences(card).join(" ");
  const findings = card.findings.map((finding) => findingItem(card, finding));
  return el(
    "article",
    { class: "uh-card__sheet" },
    el("header", {}, el("h2", { tabindex: -1 }, cardName(card))),
    head(card),
    part("Still off", off.length > 0 && el("ul", {}, ...off)),
    part("Fault finding", ...faultSections(card)),
    part("Findings", findings.length > 0 && el("ul", { class: "uh-card__plain-list" }, ...findings)),
    part("Fluid", fluid !== "" && el("p", {}, fluid)),
    ...card.jobs.map((job) => jobSection(card, job)),
    readingsTable(card),
    foot(card),
  );
}

/** @param {CardState} card */
function head(card) {
  const { vehicle, closed } = card;
  const ended = closed ? `${closed.who}, ${timeWords(closed.at)}. ${closed.reason}`.trim() : "";
  return facts([
    ["Complaint", card.complaint],
    ["Tyre", vehicle.tyre || "not known"],
    ["Axle ratio", vehicle.axle || "not known"],
    ["Odometer", vehicle.odometer],
    ["Started", `${card.started.who}, ${timeWords(card.started.at)}`],
    ["Stands", leftInWords(card)],
    ["Closed", ended],
    ["Note", card.unknown > 0 ? newerWords(card.unknown) : ""],
  ]);
}

/** @param {number} count */
function newerWords(count) {
  return `${count} of the entries were made by a newer version of the manual. They are kept and not shown here.`;
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

/**
 * @param {Session} session
 * @param {CardState} card
 */
function csvButtons(session, card) {
  const place = el("div");
  const said = (/** @type {string} */ words) => place.replaceChildren(el("p", { role: "status" }, words));
  const file = () => csvFile(session.state ?? card);
  const keep = () => {
    save(file());
    said("The readings are among the downloads.");
  };
  const give = () =>
    void share(file()).catch((error) => place.replaceChildren(notice(`Not shared. ${error.message}`)));
  const plain = { class: "uh-button uh-button--plain", type: "button" };
  const sharing = canShare(file()) && el("button", { ...plain, onclick: give }, "Share the readings");
  const buttons = [el("button", { ...plain, onclick: keep }, "Save the readings as CSV"), sharing];
  if (readingCount(card, resultsOf) === 0) return el("p", { class: "uh-facts" }, "No readings yet to save as CSV.");
  return el("div", {}, el("p", { class: "uh-card__answers" }, ...buttons), place);
}

/** @param {CardState} card */
function csvFile(card) {
  const name = `readings-${fileName(card.vehicle.identification)}-${card.started.at.slice(0, 10)}.csv`;
  return new File([readingsCsv(card, resultsOf)], name, { type: "text/csv" });
}
