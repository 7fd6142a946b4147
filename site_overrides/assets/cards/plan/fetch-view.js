// What to fetch, which look-alike it is and what to know before the first step, for the whole card.

import { cardName, notStored } from "../app.js";
import { el } from "../kit/dom.js";
import { hazardPanel } from "../kit/hazard.js";
import { counted } from "../record/left.js";
import { timeInWords } from "./choose.js";
import { fetchList } from "./order.js";
import { partChoice } from "./part-choice.js";

/** @import { App, View } from "../app.js" */
/** @import { Session } from "../record/session.js" */
/** @import { CardState, Mark, Named } from "../types.js" */

/**
 * @param {App} app
 * @param {Session} session
 * @param {CardState} card
 * @returns {View}
 */
export function fetchView(app, session, card) {
  const node = el("section", { class: "uh-card__fetch" });
  const update = () => node.replaceChildren(...contents(app, session, session.state ?? card));
  update();
  return { node, update };
}

/**
 * @param {App} app
 * @param {Session} session
 * @param {CardState} card
 * @returns {Node[]}
 */
function contents(app, session, card) {
  const { tools, parts, consumables, cautions } = fetchList(card.jobs);
  const minutes = card.jobs.reduce((sum, job) => sum + job.text.minutes, 0);
  const steps = card.jobs.reduce((sum, job) => sum + job.steps.length, 0);
  const size = [
    counted(card.jobs.length, "procedure"),
    counted(steps, "step"),
    `about ${timeInWords(minutes)}`,
  ];
  const record = (/** @type {import("../record/events.js").Happening} */ what) =>
    void session.record(`fetch|${JSON.stringify(what.value)}`, what);
  const fetch = (/** @type {string} */ kind) => (/** @type {Named} */ thing) => {
    const name = `${kind}|${thing.id}`;
    return line(thing.name, card.fetched.get(name) ?? null, (mark) =>
      record(
        mark
          ? { who: app.initials, kind: "undo", value: { of: mark.event } }
          : { who: app.initials, kind: "fetch", value: { thing: name } },
      ),
    );
  };
  const choices = parts.map((part) => partChoice(part, card.identified.get(part.id) ?? null, app, session));
  return [
    el("h2", { tabindex: -1 }, "Before you start"),
    el("p", {}, cardName(card)),
    el("p", { class: "uh-facts" }, `${size.join(" · ")}.`),
    ...notStored(session),
    ...cautions.map(hazardPanel),
    ...group("Tools", tools.map(fetch("tool"))),
    ...group("Parts, identified first", choices),
    ...group("Consumables and fluids", consumables.map(fetch("consumable"))),
    el("p", {}, el("a", { class: "uh-button", href: `#card/${card.id}` }, "Begin with the first step")),
  ];
}

/**
 * @param {string} name
 * @param {Mark|null} mark
 * @param {(mark: Mark|null) => void} toggle
 */
function line(name, mark, toggle) {
  const box = el("input", { type: "checkbox", checked: mark !== null, onchange: () => toggle(mark) });
  const who = mark ? el("small", {}, `${mark.who} has it`) : null;
  return el("li", {}, el("label", {}, box, el("span", {}, name, who ? el("br") : null, who)));
}

/**
 * @param {string} title
 * @param {HTMLElement[]} lines
 */
function group(title, lines) {
  if (lines.length === 0) return [];
  return [el("h3", {}, title), el("ul", {}, ...lines)];
}
