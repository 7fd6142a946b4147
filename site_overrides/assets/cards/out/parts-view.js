// The parts list: what the card needs, which look-alike it is, how much fluid went in, what to order.

import { URGENCY_WORDS } from "../kit/finding-words.js";
import { cardName } from "../app.js";
import { el } from "../kit/dom.js";
import { paperView, part } from "./paper-view.js";
import { partsList } from "./parts.js";

/** @import { App, View } from "../app.js" */
/** @import { Session } from "../record/session.js" */
/** @import { CardState, FindingState } from "../types.js" */
/** @import { PartLine } from "./parts.js" */

/**
 * @param {App} app
 * @param {Session} session
 * @param {CardState} card
 * @returns {View}
 */
export function partsView(app, session, card) {
  const toggle = (/** @type {PartLine} */ { thing, fetched }) => {
    const undo = { who: app.initials, kind: /** @type {const} */ ("undo"), value: { of: fetched?.event } };
    const fetch = { who: app.initials, kind: /** @type {const} */ ("fetch"), value: { thing } };
    void session.record(`fetch|${thing}`, fetched ? undo : fetch);
  };
  return paperView({ here: "parts", session, card, draw: (now) => partsSheet(now, toggle) });
}

/**
 * @param {CardState} card
 * @param {(line: PartLine) => void} toggle
 */
function partsSheet(card, toggle) {
  const { parts, consumables, fluids, advised } = partsList(card);
  const list = (/** @type {PartLine[]} */ lines) =>
    lines.length > 0 && el("ul", { class: "uh-parts" }, ...lines.map((one) => lineOf(one, card.closed ? null : toggle)));
  const found = advised.map(advisedLine);
  const none = parts.length + consumables.length + fluids.length + advised.length === 0;
  return el(
    "article",
    { class: "uh-card__sheet uh-card__fetch" },
    el("h2", { tabindex: -1 }, "Parts list"),
    el("p", {}, cardName(card)),
    none && el("p", {}, "Nothing on this card needs a part, a consumable or a fluid."),
    part("Parts", list(parts)),
    part("Consumables", list(consumables)),
    part("Fluids", list(fluids)),
    part("For what was found and advised", advised.length > 0 && el("ul", { class: "uh-parts" }, ...found)),
  );
}

/**
 * @param {PartLine} line
 * @param {((line: PartLine) => void)|null} toggle null where the card is closed
 */
function lineOf(line, toggle) {
  const about = [line.about, line.fetched && `${line.fetched.who} has it.`].filter(Boolean).join(" ");
  const words = el("span", {}, line.name, about && el("small", {}, about));
  if (line.thing === "") return el("li", { class: "uh-card__line" }, words);
  const box = el("input", {
    id: `uh-${line.thing}`,
    type: "checkbox",
    checked: line.fetched !== null,
    disabled: toggle === null,
    onchange: () => toggle?.(line),
  });
  return el("li", { class: "uh-card__line" }, el("label", {}, box, words));
}

/** @param {FindingState} finding */
function advisedLine({ what, urgency, decision }) {
  const about = [`${URGENCY_WORDS[urgency]}.`, decision?.note].filter(Boolean).join(" ");
  return el("li", { class: "uh-card__line" }, el("span", {}, what, el("small", {}, about)));
}
