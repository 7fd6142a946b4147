/** The parts of a standing that the page adds: ways to do a check, buttons, results so far. */
import { el } from "../cards/kit/dom.js";

/** @import { Acts, Setting } from "./standing-view.js" */
/** @import { Given, Result, Way } from "./types.js" */

/** What each result is called, in the order of its buttons. */
export const RESULTS = /** @type {[Result, string][]} */ ([
  ["good", "Good"],
  ["bad", "Bad"],
  ["not done", "Not done"],
]);

/** @typedef {{checks: {id: string, name: string, access: string}[], causes: {id: string, name: string}[]}} Named */

/** @param {Setting} setting */
const named = ({ family }) => /** @type {Named} */ (family.complaint);

/**
 * What a check's access asks, and the procedures that tell how it is done.
 *
 * @param {string} id
 * @param {Setting} setting
 */
export function how(id, setting) {
  const check = named(setting).checks.find((each) => each.id === id);
  const access = check?.access ?? "";
  const { meaning, procedure } = setting.family.levels?.[access] ?? {};
  const words = meaning ? `${access}: ${meaning[0].toLowerCase()}${meaning.slice(1)}` : access;
  const ways = setting.family.checks[id]?.procedures ?? [];
  const more = procedure && !ways.some((way) => way.id === procedure.id) ? [procedure] : [];
  const asks = more.length ? [" (", ...links(more, setting), ")"] : [];
  return [
    el("p", {}, `${words.slice(0, 1).toUpperCase()}${words.slice(1)}`, ...asks, "."),
    ...(ways.length ? [el("p", {}, "How: ", ...links(ways, setting))] : []),
  ];
}

/**
 * The procedures that mend a cause.
 *
 * @param {Way[]} ways
 * @param {Setting} setting
 */
export function mends(ways, setting) {
  if (ways.length === 0) return [];
  const items = ways.map((way) => el("li", {}, ...links([way], setting)));
  return [el("p", {}, "What mends it:"), el("ul", { class: "uh-contents" }, ...items)];
}

/**
 * @param {string} check
 * @param {Acts} act
 */
export function resultButtons(check, act) {
  return RESULTS.map(([result, word]) =>
    el("button", { type: "button", class: "uh-result", "data-result": result, onclick: () => act.result(check, result) }, word),
  );
}

/**
 * The results so far, the newest first, each with its undo; null where there are none.
 *
 * @param {Given[]} results
 * @param {Setting} setting
 */
export function doneList(results, setting) {
  if (results.length === 0) return null;
  const items = [...results].reverse().map((each) => doneItem(each, setting));
  return el("section", { class: "uh-done" }, el("h3", {}, "Done so far"), el("ul", { role: "list" }, ...items));
}

/**
 * @param {Given} given
 * @param {Setting} setting
 */
function doneItem({ check, result, note, isFixed }, setting) {
  const name = named(setting).checks.find((each) => each.id === check)?.name ?? check;
  const word = RESULTS.find(([each]) => each === result)?.[1] ?? result;
  const told = el("span", {}, `${name}: `, el("strong", {}, word), note ? `, ${note}` : null);
  const label = `Undo ${word}: ${name}`;
  const undo = el(
    "button",
    { type: "button", class: "uh-button uh-button--plain", "aria-label": label, onclick: () => setting.act.undo(check) },
    "Undo",
  );
  return el("li", {}, told, isFixed ? null : undo);
}

/**
 * @param {Way[]} ways
 * @param {Setting} setting
 */
function links(ways, setting) {
  return ways.flatMap(({ title, url }, at) => [at ? ", " : "", el("a", { href: setting.href(url) }, title)]);
}
