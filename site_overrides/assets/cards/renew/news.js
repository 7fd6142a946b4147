// Which procedures of a card the manual on this phone now has another text of.

import { readIndex, readProcedure } from "../plan/manual.js";
import { otherChanges, torqueChanges } from "./compare.js";
import { readTold, wordsBetween } from "./told.js";

/** @import { CardState, Job, ProcedureText } from "../types.js" */

/**
 * @typedef {object} News
 * @property {string} job
 * @property {ProcedureText} text as the manual has it now
 * @property {string[]} words what changed: torques first
 */

/** By card and the revisions on it. @type {Map<string, Promise<News[]>>} */
const asked = new Map();

/**
 * What is newer in the manual than on the card; nothing on a closed card, and nothing where the manual
 * cannot be read. The same question is asked of the manual once while the page lives.
 *
 * @param {CardState} card
 * @returns {Promise<News[]>}
 */
export function newsOf(card) {
  if (card.closed) return Promise.resolve([]);
  const key = JSON.stringify([card.id, card.jobs.map(({ id, text }) => [id, text.revision])]);
  const known = asked.get(key);
  const answer = known ?? find(card).catch(() => []);
  if (!known) asked.set(key, answer);
  return answer;
}

/** @param {CardState} card */
async function find(card) {
  const { procedures } = await readIndex();
  const now = new Map(procedures.map(({ id, revision }) => [id, revision]));
  const other = card.jobs.filter(({ text }) => (now.get(text.id) ?? text.revision) !== text.revision);
  const news = await Promise.all(other.map(newsFor));
  return news.filter((one) => one !== null);
}

/**
 * @param {Job} job
 * @returns {Promise<News|null>} null where the manual's text is the older one, or says the same
 */
async function newsFor(job) {
  const text = await readProcedure(job.text.id);
  if (job.renewals.some(({ from }) => from === text.revision)) return null;
  if (text.date && job.text.date && text.date < job.text.date) return null;
  const told = await readTold(job.text.id);
  const words = told && wordsBetween(told, job.text.revision, text.revision);
  if (words === "older") return null;
  return { job: job.id, text, words: inWords(job.text, text, words) };
}

/**
 * Torques from both texts, because they are safety; the rest as the manual tells it, or from both texts.
 *
 * @param {ProcedureText} earlier
 * @param {ProcedureText} newer
 * @param {string[]|null} told
 */
export function inWords(earlier, newer, told) {
  const torques = torqueChanges(earlier, newer);
  const rest = (told ?? otherChanges(earlier, newer)).filter((words) => !torques.some(({ name }) => tells(words, name)));
  const all = [...torques.map(({ words }) => words), ...rest];
  return all.length > 0 ? all.map(begun) : ["The text changed."];
}

/**
 * Whether the manual's own words are about this fastener, which was told already: "Name (id): 9 -> 10".
 *
 * @param {string} words
 * @param {string} name
 */
function tells(words, name) {
  return words.startsWith(`${name} (`);
}

/** The words as a sentence begins. @param {string} words */
function begun(words) {
  return words.slice(0, 1).toUpperCase() + words.slice(1);
}
