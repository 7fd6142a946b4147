// What every page for paper shares: the ways to the others, a button that prints, one drawing anew.

import { notStored } from "../app.js";
import { el } from "../kit/dom.js";

/** @import { View } from "../app.js" */
/** @import { Session } from "../record/session.js" */
/** @import { CardState } from "../types.js" */

const PAPERS = { sheet: "Job sheet", owner: "Owner’s sheet", parts: "Parts list" };

/**
 * @param {object} options
 * @param {keyof typeof PAPERS} options.here
 * @param {Session} options.session
 * @param {CardState} options.card as it was asked for
 * @param {(card: CardState) => Node} options.draw
 * @param {Node[]} [options.more] more to press, on the screen only
 * @returns {View}
 */
export function paperView({ here, session, card, draw, more = [] }) {
  const page = el("div");
  const trouble = el("div");
  /** @type {CardState|null} */
  let shown = null;
  const update = () => {
    trouble.replaceChildren(...notStored(session));
    const now = session.state ?? card;
    if (now === shown) return;
    shown = now;
    const focused = document.activeElement?.id;
    page.replaceChildren(draw(now));
    if (focused) document.getElementById(focused)?.focus();
  };
  const node = el("div", {}, ways(card, here, more), trouble, page);
  return { node, update, title: `${PAPERS[here]}, ${card.vehicle.identification}` };
}

/**
 * A date as people here write it, "" for a time that cannot be read.
 *
 * @param {string} at ISO 8601
 */
export function dateWords(at) {
  const time = new Date(at);
  return Number.isNaN(time.valueOf()) ? "" : time.toLocaleDateString("en-GB", { dateStyle: "long" });
}

/**
 * @param {string} title
 * @param {(Node|string|null|false)[]} content nothing is shown where it is empty
 */
export function part(title, ...content) {
  const some = content.filter((one) => one !== null && one !== false);
  return some.length === 0 ? null : el("section", { class: "uh-card__part-of" }, el("h3", {}, title), ...some);
}

/**
 * Rows of a name and what is said of it.
 *
 * @param {[string, string][]} rows those that say nothing are left out
 */
export function facts(rows) {
  const shown = rows.filter(([, words]) => words !== "");
  const made = shown.map(([name, words]) => el("div", {}, el("dt", {}, name), el("dd", {}, words)));
  return el("dl", { class: "uh-card__facts" }, ...made);
}

/**
 * @param {CardState} card
 * @param {string} here
 * @param {Node[]} more
 */
function ways(card, here, more) {
  const links = Object.entries(PAPERS).map(([to, words]) => {
    const current = to === here ? "page" : null;
    return el("li", {}, el("a", { href: `#card/${card.id}/${to}`, "aria-current": current }, words));
  });
  const print = { class: "uh-button", type: "button", onclick: () => window.print() };
  const back = { class: "uh-button uh-button--plain", href: `#card/${card.id}` };
  return el(
    "div",
    { class: "uh-papers uh-screen-only" },
    el("nav", { "aria-label": "On paper" }, el("ul", {}, ...links)),
    el("p", { class: "uh-card__answers" }, el("button", print, "Print"), el("a", back, "Back to the card")),
    ...more,
  );
}
