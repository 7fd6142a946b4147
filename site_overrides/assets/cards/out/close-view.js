// May the card be closed? If not, it says which steps keep it open; if so, a last look before.

import { cardName, notStored, timeWords } from "../app.js";
import { askForm } from "../kit/ask.js";
import { el } from "../kit/dom.js";
import { steps } from "../record/fold.js";
import { askedFaults, openSteps, ranges } from "../record/left.js";
import { stillOff } from "../record/review.js";
import { picturesOf } from "../record/store.js";
import { lastLook } from "./last-look.js";

/** @import { App, View } from "../app.js" */
/** @import { Session } from "../record/session.js" */
/** @import { CardState, StepState } from "../types.js" */
/** @import { Look } from "./last-look.js" */

/**
 * @param {App} app
 * @param {Session} session
 * @param {CardState} card
 * @returns {Promise<View>}
 */
export async function closeView(app, session, card) {
  const pictures = await picturesOf(card.id);
  const body = el("div");
  const node = el(
    "div",
    {},
    el("h2", { tabindex: -1 }, "Close the card"),
    el("p", {}, cardName(card)),
    body,
    el("p", {}, el("a", { href: `#card/${card.id}` }, "Back to the card")),
  );
  let seen = "";
  const update = () => {
    const { events, waiting, trouble } = session;
    const now = `${events.size} ${waiting.size} ${trouble}`;
    if (now === seen) return; // a reason that is being written stays
    seen = now;
    const hadFocus = body.contains(document.activeElement);
    body.replaceChildren(...notStored(session), ...contents(app, session, session.state ?? card, pictures));
    if (hadFocus) node.querySelector("h2")?.focus(); // what had it is gone
  };
  return { node, update, title: `Close the card, ${card.vehicle.identification}` };
}

/**
 * @param {App} app
 * @param {Session} session
 * @param {CardState} card
 * @param {Set<string>} pictures
 * @returns {Node[]}
 */
function contents(app, session, card, pictures) {
  if (session.waiting.size > 0) return [el("p", { role: "status" }, "Being stored.")];
  if (card.closed) return [...closed(app, session, card), ...looks(lastLook(card, pictures))];
  if (card.jobs.length === 0) {
    return [el("p", {}, "There is nothing on this card yet. Add a procedure first.")];
  }
  const open = openSteps(card);
  if (open.length + askedFaults(card).length > 0) return [...stillOpen(card, open), ...looks(lastLook(card, pictures))];
  return [
    el("p", { role: "status" }, "Every step is done or has a reason, and every second check is made."),
    ...looks(lastLook(card, pictures)),
    closing(app, session, card),
  ];
}

/**
 * The button that closes the card; with something still off it asks why first.
 *
 * @param {App} app
 * @param {Session} session
 * @param {CardState} card
 */
function closing(app, session, card) {
  const off = stillOff(card).map(({ thing }) => thing);
  const close = (/** @type {Record<string, unknown>} */ value) =>
    void session.record("card", { who: app.initials, kind: "close", value });
  const question = {
    label: `Still off: ${off.join(", ")}. Why is the card closed all the same?`,
    help: "The reason stands on the card.",
    go: "Close the card with this reason",
  };
  const ask = () => {
    const answer = (/** @type {string} */ reason) => close({ reason, off });
    place.replaceChildren(askForm(question, { answer, away: show }));
    place.querySelector("textarea")?.focus();
  };
  const press = { class: "uh-button", type: "button", onclick: () => (off.length > 0 ? ask() : close({})) };
  const show = () => place.replaceChildren(el("button", press, "Close the card"));
  const place = el("div", { class: "uh-card__closing" });
  show();
  return place;
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
  const asked = askedFaults(card).map(({ id, question }) =>
    el("li", {}, el("a", { href: `#card/${card.id}/fault/${id}` }, `Handed back: ${question?.question}`)),
  );
  const search = asked.length > 0 ? [el("h3", {}, "Fault finding"), el("ul", { class: "uh-card__open" }, ...asked)] : [];
  return [el("p", { role: "status" }, "The card cannot be closed yet. This is still open."), ...search, ...groups];
}

/** @param {Look[]} found */
function looks(found) {
  return found.flatMap(({ title, lines }) => {
    const items = lines.map(({ words, ways }) =>
      el("li", {}, el("p", {}, words), ...ways.map(({ href, words: to }) => el("a", { href }, to))),
    );
    return [el("h3", {}, title), el("ul", { class: "uh-look" }, ...items)];
  });
}

/**
 * @param {App} app
 * @param {Session} session
 * @param {CardState} card
 */
function closed(app, session, card) {
  const { who = "", at = "", event = "", reason = "" } = card.closed ?? {};
  const value = { of: event };
  const reopen = () => void session.record("card", { who: app.initials, kind: "undo", value });
  const plain = { class: "uh-button uh-button--plain", type: "button", onclick: reopen };
  const paper = (/** @type {string} */ to, /** @type {string} */ words) =>
    el("a", { class: "uh-button", href: `#card/${card.id}/${to}` }, words);
  return [
    el("p", { role: "status" }, `Closed by ${who}, ${timeWords(at)}.${reason ? ` Reason: ${reason}` : ""}`),
    el(
      "p",
      { class: "uh-card__answers" },
      paper("owner", "The owner’s sheet"),
      paper("sheet", "The sheet to print"),
      el("button", plain, "Open it again"),
    ),
  ];
}
