// May the card be closed? If not, it says which steps keep it open; if so, a last look before.

import { cardName, notice, timeWords } from "../app.js";
import { el } from "../kit/dom.js";
import { readingName, readingRemark, readingWords } from "../kit/reading-words.js";
import { steps } from "../record/fold.js";
import { openSteps, ranges } from "../record/left.js";

/** @import { App, View } from "../app.js" */
/** @import { Session } from "../record/session.js" */
/** @import { CardState, StepState } from "../types.js" */

/**
 * @param {App} app
 * @param {Session} session
 * @param {CardState} card
 * @returns {View}
 */
export function closeView(app, session, card) {
  const body = el("div");
  const node = el(
    "div",
    {},
    el("h2", { tabindex: -1 }, "Close the card"),
    el("p", {}, cardName(card)),
    body,
    el("p", {}, el("a", { href: `#card/${card.id}` }, "Back to the card")),
  );
  const update = () => {
    const now = session.state ?? card;
    const stuck = session.trouble ? [notice(`Not stored yet. ${session.trouble}`, retry(session))] : [];
    body.replaceChildren(...stuck, ...contents(app, session, now));
  };
  return { node, update };
}

/**
 * @param {App} app
 * @param {Session} session
 * @param {CardState} card
 * @returns {Node[]}
 */
function contents(app, session, card) {
  if (session.waiting.size > 0) return [el("p", { role: "status" }, "Being stored.")];
  if (card.closed) return closed(app, session, card);
  if (card.jobs.length === 0) {
    return [el("p", {}, "There is nothing on this card yet. Add a procedure first.")];
  }
  const open = openSteps(card);
  if (open.length > 0) return stillOpen(card, open);
  const close = () => void session.record("card", { who: app.initials, kind: "close", value: {} });
  return [
    ...outside(card),
    el("p", {}, "Every step is done or has a reason, and every second check is made."),
    el("button", { class: "uh-button", type: "button", onclick: close }, "Close the card"),
  ];
}

/**
 * Job by job: the steps that only wait to be done in one line, every other with its own reasons.
 *
 * @param {CardState} card
 * @param {ReturnType<typeof openSteps>} open
 */
function stillOpen(card, open) {
  const all = steps(card);
  const link = (/** @type {StepState} */ step, /** @type {string} */ words) =>
    el("a", { href: `#card/${card.id}/${all.indexOf(step) + 1}` }, words);
  const groups = card.jobs.flatMap((job) => {
    const own = open.filter(({ step }) => step.job === job.id);
    const todo = own.filter(({ step }) => step.shape === "todo").map(({ step }) => step);
    const others = own.filter(({ step }) => step.shape !== "todo");
    const numbers = ranges(todo.map((step) => step.text.number));
    const lines = [
      ...(todo[0] ? [[link(todo[0], `${numbers}: not done, and no reason given.`)]] : []),
      ...others.map(({ step, reasons }) => [
        link(step, `Step ${step.text.number}: ${step.text.text}`),
        el("p", {}, reasons.join(" ")),
      ]),
    ].map((parts) => el("li", {}, ...parts));
    return lines.length > 0
      ? [el("h3", {}, job.text.title), el("ol", { class: "uh-card__open" }, ...lines)]
      : [];
  });
  return [el("p", { role: "status" }, "The card cannot be closed yet. This is still open."), ...groups];
}

/** @param {CardState} card */
function outside(card) {
  const readings = steps(card).flatMap((step) => step.readings);
  const told = readings.filter((reading) => readingRemark(reading) !== "");
  if (told.length === 0) return [];
  const lines = told.map((one) =>
    el("li", {}, `${readingName(one)}: ${readingWords(one)}. ${readingRemark(one)}`),
  );
  return [el("h3", {}, "Readings with a reason"), el("ul", {}, ...lines)];
}

/**
 * @param {App} app
 * @param {Session} session
 * @param {CardState} card
 */
function closed(app, session, card) {
  const { who = "", at = "", event = "" } = card.closed ?? {};
  const value = { of: event };
  const reopen = () => void session.record("card", { who: app.initials, kind: "undo", value });
  const plain = { class: "uh-button uh-button--plain", type: "button", onclick: reopen };
  return [
    el("p", { role: "status" }, `Closed by ${who}, ${timeWords(at)}.`),
    el(
      "p",
      { class: "uh-card__answers" },
      el("a", { class: "uh-button", href: `#card/${card.id}/sheet` }, "The sheet to print"),
      el("button", plain, "Open it again"),
    ),
  ];
}

/** @param {Session} session */
function retry(session) {
  const press = { class: "uh-button", type: "button", onclick: () => void session.retry() };
  return el("button", press, "Try again");
}
