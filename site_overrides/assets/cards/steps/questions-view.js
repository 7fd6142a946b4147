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
    const asked = askedOn(now);
    const shown = canonical([asked.map(({ question, answer }) => [question, answer]), now.closed]);
    if (shown === seen) return;
    seen = shown;
    list.replaceChildren(...contents(app, session, now, asked));
  };
  return { node, update, awake: true };
}

/**
 * Something that was handed back: a step, or the search for the cause of a complaint.
 *
 * @typedef {object} Asked
 * @property {NonNullable<StepState["question"]>} question
 * @property {StepState["answer"]} answer
 * @property {string[]} lines what else was said about it
 * @property {string} href
 * @property {string} words where it is
 * @property {boolean} isOpen
 * @property {string} key
 * @property {Record<string, unknown>} about what an answer says it is about
 * @property {string} [revision]
 */

/**
 * @param {CardState} card
 * @returns {Asked[]}
 */
function askedOn(card) {
  const all = steps(card);
  const ofSteps = all.flatMap((step, at) => {
    const job = card.jobs.find(({ id }) => id === step.job);
    if (!step.question) return [];
    return [{
      question: step.question,
      answer: step.answer,
      lines: saidLines({ ...step, question: null }),
      href: `#card/${card.id}/${at + 1}`,
      words: `${job?.text.title}, step ${step.text.number}`,
      isOpen: step.shape === "handed-back",
      key: step.key,
      about: { job: step.job, step: step.text.number },
      revision: job?.text.revision,
    }];
  });
  const ofFaults = [...card.faults.values()].flatMap(({ id, complaint, question, answer }) => {
    if (!question) return [];
    return [{
      question,
      answer,
      lines: answer ? [`Answered by ${answer.who}, ${timeWords(answer.at)}: ${answer.answer}`] : [],
      href: `#card/${card.id}/fault/${id}`,
      words: `Fault finding: ${complaint}`,
      isOpen: !answer,
      key: `fault|${id}|question`,
      about: { job: "", step: 0, fault: id },
    }];
  });
  return [...ofFaults, ...ofSteps];
}

/**
 * @param {App} app
 * @param {Session} session
 * @param {CardState} card
 * @param {Asked[]} asked
 * @returns {Node[]}
 */
function contents(app, session, card, asked) {
  const open = asked.filter(({ isOpen }) => isOpen);
  const answered = asked.filter(({ isOpen }) => !isOpen);
  const entry = (/** @type {Asked} */ one) => line(app, session, card, one);
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
 * @param {Asked} one
 */
function line(app, session, card, one) {
  const { question, lines, href, words, isOpen } = one;
  return el(
    "li",
    { class: "uh-finding" },
    el("p", { class: "uh-finding__what" }, question.question),
    el("p", {}, `Asked by ${question.who}, ${timeWords(question.at)}. `, el("a", { href }, words)),
    ...lines.map((said) => el("p", { class: "uh-card__said" }, said)),
    isOpen && card.closed === null ? answering(app, session, one) : null,
  );
}

/**
 * @param {App} app
 * @param {Session} session
 * @param {Asked} one
 */
function answering(app, session, { question, key, about, revision }) {
  const place = el("div");
  const act = answerAct({ question });
  const close = () => place.replaceChildren(button);
  const press = () => {
    const answer = (/** @type {string} */ entry) => {
      close();
      const value = { ...about, ...act.value(entry) };
      void session.record(key, { who: app.initials, kind: act.kind, value, revision });
    };
    const away = () => {
      close();
      button.focus();
    };
    const form = askForm({ ...act.question, label: "Your answer" }, { answer, away });
    place.replaceChildren(form);
    form.querySelector("textarea")?.focus();
  };
  const label = `Answer: ${question.question}`;
  const button = el("button", { class: "uh-button", type: "button", "aria-label": label, onclick: press }, "Answer");
  close();
  return place;
}
