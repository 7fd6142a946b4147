// One quiet line for everything that a person at work should know and need not answer now.

import { el } from "../kit/dom.js";
import { counted } from "../record/left.js";
import { newsOf } from "./news.js";

/** @import { Session } from "../record/session.js" */
/** @import { CardEvent, CardState } from "../types.js" */
/** @import { News } from "./news.js" */

/** What a place shows, so that nothing is drawn or read aloud twice. @type {WeakMap<HTMLElement, string>} */
const shown = new WeakMap();

/**
 * Fills a place with the lines for a card, or for one job of it; it fills itself once the manual has
 * answered, and stays empty where there is nothing to say.
 *
 * @param {HTMLElement} place
 * @param {Session} session
 * @param {CardState} card
 * @param {string} [job]
 */
export function showNews(place, session, card, job) {
  const ask = JSON.stringify([card.id, job, card.closed, card.jobs.map(({ text }) => text.revision), session.cleared]);
  if (shown.get(place) === ask) return;
  shown.set(place, ask);
  const cleared = session.cleared ? [el("p", {}, clearedWords(card, session.cleared))] : [];
  place.replaceChildren(...cleared);
  void newsOf(card).then((news) => {
    if (shown.get(place) !== ask) return;
    const own = news.filter((one) => job === undefined || one.job === job);
    place.replaceChildren(...cleared, ...own.map((one) => line(card, one)));
  });
}

/**
 * @param {CardState} card
 * @param {News} news
 */
function line(card, { job, text, words }) {
  const at = card.jobs.findIndex(({ id }) => id === job) + 1;
  const more = words.length > 1 ? ` And ${counted(words.length - 1, "more change")}.` : "";
  const first = /[.”)]$/.test(words[0]) ? words[0] : `${words[0]}.`;
  const link = el("a", { href: `#card/${card.id}/newer/${at}` }, `The manual has a newer text of ${text.title}`);
  return el("p", {}, link, `: ${first}${more}`);
}

/**
 * @param {CardState} card
 * @param {{back: number, lost: CardEvent[]}} cleared
 */
function clearedWords(card, { back, lost }) {
  const was = back === 1 ? "is" : "are";
  const kept = `The browser had cleared this phone’s records. ${counted(back, "entry", "entries")} of this card that this page still held ${was} back.`;
  if (lost.length === 0) return kept;
  const where = [...new Set(lost.map((event) => placeOf(card, event)))].join("; ");
  return `${kept} ${counted(lost.length, "photo")} ${lost.length === 1 ? "is" : "are"} lost: ${where}. Take ${lost.length === 1 ? "it" : "them"} again.`;
}

/**
 * What a photo was of.
 *
 * @param {CardState} card
 * @param {CardEvent} event
 */
function placeOf(card, { value, who }) {
  const finding = card.findings.find(({ id }) => id === value.finding);
  if (finding) return `of the finding “${finding.what}”`;
  const job = card.jobs.find(({ id }) => id === value.job);
  return job ? `at step ${Number(value.step)} of ${job.text.title}, by ${who}` : `by ${who}`;
}
