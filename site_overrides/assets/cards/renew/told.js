// What the manual itself wrote down about the changes of a procedure.

import { siteRoot } from "../plan/manual.js";

/** One revision, with what changed since the one before. @typedef {{revision: string, words: string[]}} Told */

/**
 * The revisions of a procedure, newest first; null where that cannot be read, as without a signal.
 *
 * @param {string} id
 * @returns {Promise<Told[]|null>}
 */
export async function readTold(id) {
  const address = new URL(`changes/data/${encodeURIComponent(id)}.json`, siteRoot());
  const answer = await fetch(address).catch(() => null);
  const data = answer?.ok ? await answer.json().catch(() => null) : null;
  return Array.isArray(data) && data.every(isTold) ? data : null;
}

/** @param {any} one @returns {one is Told} */
function isTold(one) {
  return typeof one?.revision === "string" && Array.isArray(one.words) && one.words.every(isText);
}

/** @param {unknown} word */
function isText(word) {
  return typeof word === "string";
}

/**
 * What changed from one revision to another, the latest change first; null where the list does not lead
 * from the one to the other; "older" where it leads the other way.
 *
 * @param {Told[]} told newest first
 * @param {string} from
 * @param {string} to
 * @returns {string[]|null|"older"}
 */
export function wordsBetween(told, from, to) {
  const end = told.findIndex(({ revision }) => revision === to);
  const start = told.findIndex(({ revision }, at) => at > end && revision === from);
  if (end < 0) return null;
  if (start < 0) return told.slice(0, end).some(({ revision }) => revision === from) ? "older" : null;
  const words = told.slice(end, start).flatMap((one) => one.words);
  return words.length > 0 ? [...new Set(words)] : null;
}
