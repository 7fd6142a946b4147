// What to fetch and what to know before the first step, for the whole card at once.

import { cardName } from "../app.js";
import { el } from "../kit/dom.js";
import { hazardPanel } from "../kit/hazard.js";
import { counted } from "../record/left.js";
import { fetchList } from "./order.js";

/** @import { App, View } from "../app.js" */
/** @import { Session } from "../record/session.js" */
/** @import { CardState } from "../types.js" */

/**
 * @param {App} _app
 * @param {Session} _session
 * @param {CardState} card
 * @returns {View}
 */
export function fetchView(_app, _session, card) {
  const { tools, parts, consumables, cautions } = fetchList(card.jobs);
  const minutes = card.jobs.reduce((sum, job) => sum + job.text.minutes, 0);
  const steps = card.jobs.reduce((sum, job) => sum + job.steps.length, 0);
  const size = [
    counted(card.jobs.length, "procedure"),
    counted(steps, "step"),
    `about ${counted(minutes, "minute")}`,
  ];
  const node = el(
    "section",
    { class: "uh-card__fetch" },
    el("h2", { tabindex: -1 }, "Before you start"),
    el("p", {}, cardName(card)),
    el("p", { class: "uh-facts" }, `${size.join(" · ")}.`),
    ...cautions.map(hazardPanel),
    ...list("Tools", tools),
    ...list("Parts, identified first", parts),
    ...list("Consumables and fluids", consumables),
    el("p", {}, el("a", { class: "uh-button", href: `#card/${card.id}` }, "Begin with the first step")),
  );
  return { node };
}

/**
 * @param {string} title
 * @param {string[]} names
 */
function list(title, names) {
  if (names.length === 0) return [];
  return [el("h3", {}, title), el("ul", {}, ...names.map((name) => el("li", {}, name)))];
}
