// The procedures of a card in their order, with what is left in each.

import { cardName, notStored, timeWords } from "../app.js";
import { el } from "../kit/dom.js";
import { leftInWords, leftOf, placeOf } from "../record/left.js";
import { offInWords } from "./off-words.js";

/** @import { App, View } from "../app.js" */
/** @import { Session } from "../record/session.js" */
/** @import { CardState, Job } from "../types.js" */

/**
 * @param {App} app
 * @param {Session} session
 * @param {CardState} card
 * @returns {View}
 */
export function jobsView(app, session, card) {
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
      ...notStored(session),
      el("ol", { class: "uh-card__open" }, ...now.jobs.map((job) => line(now, job, renewal(app, session, now, job)))),
    );
  };
  return { node, update, awake: true };
}

/**
 * Leads to the first step that is open, or else to the procedure's first.
 *
 * @param {CardState} card
 * @param {Job} job
 * @param {Node[]} more
 */
function line(card, job, more) {
  const left = leftOf(job.steps);
  const words = left === "" ? "Nothing is left." : `Left: ${left}.`;
  return el(
    "li",
    {},
    el("a", { href: `#card/${card.id}/${placeOf(card, job)}` }, job.text.title),
    el("p", { class: "uh-card__said" }, words),
    ...more,
  );
}

/**
 * A newer text that was taken, and the way back to the one before it.
 *
 * @param {App} app
 * @param {Session} session
 * @param {CardState} card
 * @param {Job} job
 * @returns {Node[]}
 */
function renewal(app, session, card, { text, renewals }) {
  const last = renewals.at(-1);
  if (!last) return [];
  const { event, who, at } = last.mark;
  const undo = () => {
    if (session.waiting.size === 0) void session.record("card", { who: app.initials, kind: "undo", value: { of: event } });
  };
  const label = `Undo the newer text of ${text.title}: work by the one before it again`;
  const press = { class: "uh-button uh-button--plain", type: "button", "aria-label": label, onclick: undo };
  const words = `Newer text taken by ${who}, ${timeWords(at)}.`;
  return [el("p", { class: "uh-card__said" }, words), ...(card.closed ? [] : [el("p", {}, el("button", press, "Undo the newer text"))])];
}
