// One page for the owner: what he said, what was found, what was done, what to watch.

import { el } from "../kit/dom.js";
import { photoImage } from "../kit/photo.js";
import { ownerTold, whatBecame } from "./owner.js";
import { dateWords, facts, paperView, part } from "./paper-view.js";
import { RESULT_WORDS } from "../fault/words.js";
import { causeWords, prepareFaults, resultsOf } from "./sheet-faults.js";

/** @import { App, View } from "../app.js" */
/** @import { Measured } from "./owner.js" */
/** @import { Session } from "../record/session.js" */
/** @import { CardState, FindingState } from "../types.js" */

/**
 * @param {App} _app
 * @param {Session} session
 * @param {CardState} card
 * @returns {Promise<View>}
 */
export async function ownerView(_app, session, card) {
  await prepareFaults(card);
  const choice = measuredChoice(card);
  return paperView({ here: "owner", session, card, draw: ownerSheet, more: choice ? [choice] : [] });
}

/** @param {CardState} card */
function ownerSheet(card) {
  const { vehicle, complaint, started, closed } = card;
  const told = ownerTold(card);
  const days = [...new Set([started.at, closed?.at ?? ""].map(dateWords))].filter(Boolean).join(" to ");
  const rows = /** @type {[string, string][]} */ ([
    ["Vehicle", vehicle.identification],
    ["Odometer", vehicle.odometer],
    ["In the workshop", days],
    ["Worked on by", told.people.worked.join(", ")],
    ["Second check by", told.people.checked.join(", ")],
  ]);
  const work = told.work.map((title) => el("li", {}, title));
  const nothing = told.right.length === 0 && told.open.length === 0;
  return el(
    "article",
    { class: "uh-card__sheet uh-owner" },
    el("h2", { tabindex: -1 }, "For the owner"),
    facts(rows),
    ...told.stop.length > 0 ? [stopBox(told.stop)] : [],
    part("What you told us", el("blockquote", {}, complaint)),
    part("How we looked for the cause", ...searched(card)),
    nothing && part("What we found", el("p", {}, "We found nothing that you need to know of.")),
    part("Found and put right", told.right.length > 0 && el("ul", {}, ...told.right.map(findingLine))),
    part("Found, and still to do or to watch", told.open.length > 0 && el("ul", {}, ...told.open.map(findingLine))),
    part("Work done", told.work.length > 0 && el("ul", { class: "uh-owner__work" }, ...work)),
    part("Fluid", told.fluid !== "" && el("p", {}, told.fluid)),
    measuredPart(told.measured),
    part("Next visit", el("p", { class: "uh-owner__lines" }, line("Date"), line("Or at"), line("For"))),
    el("p", { class: "uh-owner__lines" }, line("Signed, workshop"), line("Owner"), line("Date")),
  );
}

/**
 * What was looked at for each complaint, and the cause that was named.
 *
 * @param {CardState} card
 */
function searched(card) {
  return [...card.faults.values()].flatMap((fault) => {
    const made = resultsOf(card, fault).filter(({ result }) => result !== "not done");
    const named = card.findings.some(({ cause }) => cause?.fault === fault.id);
    const checks = made.map(({ name, result }) => `${name} (${RESULT_WORDS[result].toLowerCase()})`);
    const told = [
      ...(card.faults.size > 1 ? [`“${fault.complaint}”`] : []),
      ...(checks.length > 0 ? [`Checked: ${checks.join("; ")}.`] : []),
      ...(named ? [`Cause: ${causeWords(card, fault)}`] : []),
    ];
    return checks.length > 0 || named ? told.map((words) => el("p", {}, words)) : [];
  });
}

/** @param {FindingState[]} findings */
function stopBox(findings) {
  const list = findings.map(({ what }) => el("li", {}, what));
  const words = el("p", {}, "Do not drive it before this is put right.");
  return el("div", { class: "uh-owner__stop" }, words, el("ul", {}, ...list));
}

/** @param {FindingState} finding */
function findingLine(finding) {
  const photos = finding.photos.map(photoImage);
  return el(
    "li",
    { class: "uh-card__line uh-sheet__finding" },
    el("div", {}, el("p", { class: "uh-finding__what" }, finding.what), el("p", {}, whatBecame(finding))),
    photos.length > 0 && el("div", { class: "uh-sheet__photos" }, ...photos),
  );
}

/** @param {Measured[]} list */
function measuredPart(list) {
  const lines = list.map(({ name, before, after }) => el("li", {}, `${name}: ${before} before, ${after} after`));
  const shown = part("Measured before and after", lines.length > 0 && el("ul", {}, ...lines));
  if (shown) shown.classList.add("uh-owner__measured");
  return shown;
}

/**
 * What was measured says little to most owners: it is shown where the shop wants it.
 *
 * @param {CardState} card
 */
function measuredChoice(card) {
  if (ownerTold(card).measured.length === 0) return null;
  const show = (/** @type {Event} */ { target }) => {
    if (!(target instanceof HTMLInputElement)) return;
    target.closest(".uh-card")?.toggleAttribute("data-measured", target.checked);
  };
  const box = el("input", { type: "checkbox", onchange: show });
  return el("label", { class: "uh-papers__choice" }, box, "Show what was measured before and after");
}

/** @param {string} name */
function line(name) {
  return el("span", {}, `${name} `, el("span", { class: "uh-owner__line" }));
}
