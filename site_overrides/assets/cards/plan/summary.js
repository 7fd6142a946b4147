// What a card will hold, written out before it is added.

import { el } from "../kit/dom.js";
import { counted } from "../record/left.js";
import { timeInWords } from "./choose.js";

/** @import { Choice } from "./choose.js" */

/**
 * @param {Choice} choice
 * @returns {Node[]}
 */
export function summary({ list, along, missed }) {
  if (list.length === 0) return [];
  const minutes = list.reduce((sum, one) => sum + one.minutes, 0);
  const size = `${counted(list.length, "procedure")}, about ${timeInWords(minutes)}.`;
  const lines = list.map(({ id, title, minutes: own }) => {
    const facts = [timeInWords(own), ...(along.has(id) ? [`comes with ${words(along.get(id))}`] : [])];
    return el("li", {}, title, el("br"), el("small", {}, facts.join(" · ")));
  });
  const left = missed.map(({ title, by }) => el("p", {}, `Left out: ${title}, although it belongs to ${words(by)}.`));
  return [
    el("h3", {}, "This comes onto the card, in this order"),
    el("p", { class: "uh-facts", role: "status" }, size),
    el("ol", { class: "uh-card__order" }, ...lines),
    ...left,
  ];
}

/** @param {string[]} [titles] */
function words(titles = []) {
  const last = titles.at(-1) ?? "";
  return titles.length > 1 ? `${titles.slice(0, -1).join(", ")} and ${last}` : last;
}
