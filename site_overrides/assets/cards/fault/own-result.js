// Results that are given without being asked for: of a check that a reading has decided, and of any
// check while its place in the order cannot be worked out.

import { el } from "../kit/dom.js";
import { resultButtons } from "../../fault/standing-parts.js";
import { checksOf } from "./counted.js";
import { RESULT_WORDS, minutesWords } from "./words.js";

/** @import { FaultView } from "./fault-view.js" */

/**
 * @param {FaultView} view
 * @returns {Node[]}
 */
export function sayOtherwise(view) {
  const fixed = view.results.filter(({ said }) => said === null);
  if (fixed.length === 0) return [];
  const items = fixed.map(({ check, name, result }) =>
    el("li", {}, el("p", {}, `${name}: `, el("strong", {}, RESULT_WORDS[result])), buttons(view, check, name)),
  );
  const help = "Your own result goes before what a reading or a calculator says.";
  return [el("details", { class: "uh-more" }, el("summary", {}, "I see it otherwise"), el("p", {}, help), el("ul", { class: "uh-cause__list" }, ...items))];
}

/**
 * @param {FaultView} view
 * @returns {Node[]}
 */
export function writtenOrder(view) {
  const given = view.given();
  const items = checksOf(view.manual.family).map(({ id, name, minutes, access }) => {
    const own = given.find(({ check }) => check === id);
    const told = own && el("p", {}, el("strong", {}, RESULT_WORDS[own.result]), `, ${own.note}`);
    const undo = own && !own.isFixed && undoButton(view, id, name);
    return el(
      "li",
      {},
      el("h4", {}, name),
      el("p", { class: "uh-facts" }, [minutesWords(minutes), access].filter(Boolean).join(" · ")),
      el("div", { "data-how": id }),
      told ?? null,
      undo ?? null,
      own ? null : buttons(view, id, name),
    );
  });
  const title = "Checks, in the order of the complaint’s page";
  return [el("h3", {}, title), el("ol", { class: "uh-cause__list" }, ...items), el("section", { class: "uh-ask" }, el("h3", {}, "Stop and ask"))];
}

/**
 * @param {FaultView} view
 * @param {string} check
 * @param {string} name
 */
function buttons(view, check, name) {
  const act = { result: view.give.bind(view), undo: view.takeBack.bind(view) };
  return el("div", { class: "uh-next__results", role: "group", "aria-label": name }, ...resultButtons(check, act));
}

/**
 * @param {FaultView} view
 * @param {string} check
 * @param {string} name
 */
function undoButton(view, check, name) {
  const press = { class: "uh-button uh-button--plain", type: "button", "aria-label": `Undo: ${name}` };
  return el("p", {}, el("button", { ...press, onclick: () => void view.takeBack(check) }, "Undo"));
}
