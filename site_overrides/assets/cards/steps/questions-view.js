// What was handed back, for the senior tech to answer in one go.

import { cardName, notStored, timeWords } from "../app.js";
import { askForm } from "../kit/ask.js";
import { el } from "../kit/dom.js";
import { canonical } from "../record/canonical.js";
import { steps } from "../record/fold.js";
import { answerAct } from "./acts.js";
import { saidLines } from "./step-view.js";

/** @import { App, View } from "../app.js" */
/** @import { Session } from "../record/session.js" */
/** @import { CardState, StepState } from "../types.js" */

/**
 * @param {App} app
 * @param {Session} session
 * @param {CardState} card
 * @returns {View}
 */
export function questionsView(app, session, card) {
  const heading = el("h2", { tabindex: -1 }, "Questions for the senior");
  const trouble = el("div");
  const list = el("div");
  const back = el("a", { class: "uh-button uh-button--plain", href: `#card/${card.id}` }, "Back to the work");
  const node = el("section", { class: "uh-card__questions" }, heading, el("p", {}, cardName(card)), trouble, list, el("p", {}, back));
  let seen = "";
  const update = () => {
    const now = session.state ?? card;
    trouble.replaceChildren(...notStored(session));
    const asked = steps(now).filter((step) => step.question !== null);
    const shown = canonical([asked.map(({ key, question, answer, shape }) => [key, question, answer, shape]), now.closed]);
    if (shown === seen) return;
    seen = shown;
    list.replaceChildren(...contents(app, session, now, asked));
  };
  return { node, update, awake: true };
}

/**
 * @param {App} app
 * @param {Session} session
 * @param {CardState} card
 * @param {StepState[]} asked
 * @returns {Node[]}
 */
function contents(app, session, card, asked) {
  const open = asked.filter((step) => step.shape === "handed-back");
  const answered = asked.filter((step) => step.shape !== "handed-back");
  const entry = (/** @type {StepState} */ step) => line(app, session, card, step);
  if (asked.length === 0) return [el("p", {}, "Nothing is asked. A step is handed back with “Hand back”, beside its tick.")];
  return [
    el("p", { role: "status" }, open.length === 0 ? "Every question is answered." : "These wait for an answer."),
    ...(open.length > 0 ? [el("ul", { class: "uh-findings" }, ...open.map(entry))] : []),
    ...(answered.length > 0 ? [el("h3", {}, "Answered"), el("ul", { class: "uh-findings" }, ...answered.map(entry))] : []),
  ];
}

/**
 * @param {App} app
 * @param {Session} session
 * @param {CardState} card
 * @param {StepState} step
 */
function line(app, session, card, step) {
  const title = card.jobs.find((job) => job.id === step.job)?.text.title;
  const href = `#card/${card.id}/${steps(card).indexOf(step) + 1}`;
  const { question, answer } = step;
  const asked = question ? `Asked by ${question.who}, ${timeWords(question.at)}.` : "";
  const said = saidLines({ ...step, question: null, answer }).map((words) => el("p", { class: "uh-card__said" }, words));
  const open = step.shape === "handed-back" && card.closed === null;
  return el(
    "li",
    { class: "uh-finding" },
    el("p", { class: "uh-finding__what" }, question?.question ?? ""),
    el("p", {}, `${asked} `, el("a", { href }, `${title}, step ${step.text.number}`)),
    ...said,
    open ? answering(app, session, card, step) : null,
  );
}

/**
 * @param {App} app
 * @param {Session} session
 * @param {CardState} card
 * @param {StepState} step
 */
function answering(app, session, card, step) {
  const place = el("div");
  const act = answerAct(step);
  const close = () => place.replaceChildren(button);
  const press = () => {
    const answer = (/** @type {string} */ entry) => {
      close();
      const value = { job: step.job, step: step.text.number, ...act.value(entry) };
      const revision = card.jobs.find((job) => job.id === step.job)?.text.revision;
      void session.record(step.key, { who: app.initials, kind: act.kind, value, revision });
    };
    const away = () => {
      close();
      button.focus();
    };
    const form = askForm({ ...act.question, label: "Your answer" }, { answer, away });
    place.replaceChildren(form);
    form.querySelector("textarea")?.focus();
  };
  const label = `Answer: ${step.question?.question}`;
  const button = el("button", { class: "uh-button", type: "button", "aria-label": label, onclick: press }, "Answer");
  close();
  return place;
}
