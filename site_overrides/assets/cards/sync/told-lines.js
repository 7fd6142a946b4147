// Single entries that a person should know about, in a list that does not grow without end.

import { el } from "../kit/dom.js";
import { counted } from "../record/left.js";

/** @import { Refused } from "./incoming.js" */

/** More than these are only counted. */
const SHOWN = 10;

/**
 * @param {Refused[]} told
 * @returns {HTMLElement[]} none where there is nothing to tell
 */
export function toldLines(told) {
  if (told.length === 0) return [];
  const sorted = [...told].sort((a, b) => (a.id < b.id ? -1 : 1));
  const more = told.length - SHOWN;
  return [
    el("h3", {}, "To look at"),
    el("ul", {}, ...sorted.slice(0, SHOWN).map(({ wrong }) => el("li", {}, wrong))),
    ...(more > 0 ? [el("p", {}, `And ${counted(more, "more entry", "more entries")}.`)] : []),
  ];
}
