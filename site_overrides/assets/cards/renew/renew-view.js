// The text that a card works by beside the one the manual has now, and the question whether to take it.

import { cardName, notice } from "../app.js";
import { el } from "../kit/dom.js";
import { safeFragment } from "../kit/safe-html.js";
import { stepBase } from "../plan/manual.js";
import { dateWords } from "../out/paper-view.js";
import { ranges } from "../record/left.js";
import { pairSteps } from "./compare.js";
import { newsOf } from "./news.js";

/** @import { App, View } from "../app.js" */
/** @import { Session } from "../record/session.js" */
/** @import { CardState, Job, StepText } from "../types.js" */
/** @import { News } from "./news.js" */
/** @import { StepPair } from "./compare.js" */

/**
 * @param {App} app
 * @param {Session} session
 * @param {CardState} card
 * @returns {Promise<View>}
 */
export async function renewView(app, session, card) {
  const job = card.jobs[Number(location.hash.split("/")[3]) - 1];
  const news = (await newsOf(card)).find((one) => one.job === job?.id);
  const back = el("p", {}, el("a", { href: `#card/${card.id}` }, "Back to the card"));
  if (!job || !news) {
    const heading = el("h2", { tabindex: -1 }, "A newer text");
    return { node: el("div", {}, heading, el("p", {}, "The card works by the text that the manual has now."), back) };
  }
  const node = el(
    "div",
    { class: "uh-renew" },
    el("h2", { tabindex: -1 }, "A newer text"),
    el("p", {}, cardName(card)),
    el("h3", {}, job.text.title),
    el("p", { class: "uh-facts" }, revisions(job, news)),
    el("h3", {}, "What changed"),
    el("ul", {}, ...news.words.map((words) => el("li", {}, words))),
    ...consent(app, session, job, news),
    ...bothTexts(job, news),
    back,
  );
  return { node };
}

/**
 * @param {Job} job
 * @param {News} news
 */
function revisions(job, { text }) {
  const told = (/** @type {Job["text"]} */ one) =>
    [one.revision, one.date && `of ${dateWords(one.date)}`, one.author && `by ${one.author}`].filter(Boolean).join(" ");
  return `The card works by revision ${told(job.text)}. The manual has revision ${told(text)}.`;
}

/**
 * @param {App} app
 * @param {Session} session
 * @param {Job} job
 * @param {News} news
 * @returns {Node[]}
 */
function consent(app, session, job, { text, words }) {
  const trouble = el("div");
  const take = el("button", { class: "uh-button", type: "button" }, "Work by the newer text");
  take.addEventListener("click", async () => {
    take.disabled = true;
    const value = { job: job.id, procedure: text, words };
    const what = { who: app.initials, kind: /** @type {const} */ ("renew"), value, revision: text.revision };
    if (await session.record("card", what)) return app.go(`#card/${session.card}`);
    const again = el("button", { class: "uh-button", type: "button" }, "Try again");
    again.addEventListener("click", async () => {
      if (await session.retry()) app.go(`#card/${session.card}`);
    });
    trouble.replaceChildren(notice(`Not stored yet. ${session.trouble}`, again));
  });
  const keep = el("a", { class: "uh-button uh-button--plain", href: `#card/${session.card}` }, "Keep the text of the card");
  return [
    el("p", {}, whatHappens(job, pairSteps(job.text.steps, text.steps))),
    el("p", { class: "uh-card__answers" }, take, keep),
    trouble,
  ];
}

/**
 * @param {Job} job
 * @param {StepPair[]} pairs
 */
function whatHappens(job, pairs) {
  const touched = new Set(pairs.filter(({ kind }) => kind === "changed" || kind === "gone").map(({ earlier }) => earlier?.number));
  const done = job.steps.filter((step) => touched.has(step.text.number) && step.shape !== "todo");
  if (done.length === 0) return "Nothing that is done on this card changes.";
  const numbers = ranges(done.map(({ text }) => text.number));
  return `${numbers} of the card’s text ${done.length === 1 ? "is" : "are"} done already, and changed: the newer text asks for ${done.length === 1 ? "it" : "them"} anew. What is on ${done.length === 1 ? "it" : "them"} stays on the card, under “From the earlier text”.`;
}

/**
 * @param {Job} job
 * @param {News} news
 * @returns {Node[]}
 */
function bothTexts(job, { text }) {
  const pairs = pairSteps(job.text.steps, text.steps);
  const other = pairs.filter(({ kind }) => kind !== "same");
  const same = pairs.flatMap(({ kind, newer }) => (kind === "same" && newer ? [newer.number] : []));
  const unchanged = same.length > 0 ? [el("p", { class: "uh-facts" }, `${ranges(same)} of the newer text: as before.`)] : [];
  return other.length > 0 ? [el("h3", {}, "Both texts"), ...other.map(pairView), ...unchanged] : [];
}

/** @param {StepPair} pair */
function pairView({ kind, earlier, newer }) {
  const words = {
    same: "",
    changed: `Step ${newer?.number}: changed`,
    new: `Step ${newer?.number}: new`,
    gone: `Step ${earlier?.number} of the card’s text: gone`,
  };
  return el(
    "section",
    { class: "uh-renew__pair" },
    el("h4", {}, words[kind]),
    newer && textView("The manual now", newer),
    earlier && textView("The card’s text", earlier),
  );
}

/**
 * @param {string} whose
 * @param {StepText} step
 */
function textView(whose, step) {
  const words = el("div", { class: "uh-card__do" }, safeFragment(step.html, stepBase()));
  return el("div", { class: "uh-renew__text" }, el("p", { class: "uh-renew__whose" }, whose), words);
}
