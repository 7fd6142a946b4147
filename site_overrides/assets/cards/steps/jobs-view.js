// The procedures of a card in their order, with what is left in each.

import { cardName } from "../app.js";
import { el } from "../kit/dom.js";
import { leftInWords, leftOf, placeOf } from "../record/left.js";
import { offInWords } from "./off-words.js";

/** @import { App, View } from "../app.js" */
/** @import { Session } from "../record/session.js" */
/** @import { CardState, Job } from "../types.js" */

/**
 * @param {App} _app
 * @param {Session} session
 * @param {CardState} card
 * @returns {View}
 */
export function jobsView(_app, session, card) {
  const list = el("div");
  const back = el("a", { class: "uh-button", href: `#card/${card.id}` }, "Back to the work");
  const heading = el("h2", { tabindex: -1 }, "What is left, by procedure");
  const node = el("section", { class: "uh-card__jobs" }, heading, el("p", {}, cardName(card)), list, el("p", {}, back));
  const update = () => {
    const now = session.state ?? card;
    const off = offInWords(now);
    list.replaceChildren(
      el("p", { role: "status" }, leftInWords(now)),
      ...(off ? [el("p", {}, off)] : []),
      el("ol", { class: "uh-card__open" }, ...now.jobs.map((job) => line(now, job))),
    );
  };
  return { node, update, awake: true };
}

/**
 * Leads to the first step that is open, or else to the procedure's first.
 *
 * @param {CardState} card
 * @param {Job} job
 */
function line(card, job) {
  const left = leftOf(job.steps);
  const words = left === "" ? "Nothing is left." : `Left: ${left}.`;
  return el(
    "li",
    {},
    el("a", { href: `#card/${card.id}/${placeOf(card, job)}` }, job.text.title),
    el("p", { class: "uh-card__said" }, words),
  );
}
