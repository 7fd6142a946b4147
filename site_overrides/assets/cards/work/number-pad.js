// Large keys for one thumb. The phone's own keyboard stays away until it is asked for.

import { el } from "../kit/dom.js";
import { DELETE, FRACTIONS, MINUS, POINT, mayBeNegative, pressed } from "./pad-keys.js";

/** @import { ReadingAsked } from "../types.js" */

/** @type {Record<string, string>} */
const SPOKEN = { [POINT]: "Point", [MINUS]: "Minus" };
const ROWS = ["123", "456", "789"];

/**
 * The pad of an entry, its key that deletes, and the button that calls the ordinary keyboard instead.
 * Who works with keys writes into the entry itself, so the pad is not among what Tab reaches.
 *
 * @param {HTMLInputElement} input
 * @param {ReadingAsked} asked
 */
export function numberPad(input, asked) {
  const turns = asked.unit === "turn";
  const press = (/** @type {string} */ name) => () => {
    input.value = pressed(input.value, name);
    input.dispatchEvent(new Event("input", { bubbles: true }));
  };
  const key = (/** @type {string} */ name, /** @type {string} */ label = name) =>
    el("button", { ...QUIET, "aria-label": SPOKEN[name] ?? label, "data-key": name, onclick: press(name) }, name);
  const rows = ROWS.flatMap((row, at) => [
    ...[...row].map((digit) => key(digit)),
    ...(turns ? [key(FRACTIONS[at], `and ${FRACTIONS[at]} turn`)] : []),
  ]);
  const last = [...(mayBeNegative(asked) ? [key(MINUS)] : []), key("0"), key(POINT)];
  const shape = { class: "uh-pad", "data-columns": turns ? 4 : 3, hidden: true };
  const pad = el("div", { ...shape, role: "group", "aria-label": "Number pad" }, ...rows, ...last);
  const remove = el("button", { ...QUIET, class: "uh-pad__delete", "aria-label": "Delete", onclick: press(DELETE) }, "⌫");
  const ordinary = () => {
    input.inputMode = turns ? "text" : "decimal";
    pad.hidden = true;
    keyboard.hidden = true;
    input.blur();
    input.focus();
  };
  const plain = { class: "uh-button uh-button--plain", type: "button", hidden: true };
  const keyboard = el("button", { ...plain, onclick: ordinary }, "Keyboard");
  const open = () => {
    if (!pad.hidden || input.inputMode !== "none") return;
    pad.hidden = false;
    keyboard.hidden = false;
    input.closest("form")?.scrollIntoView({ block: "nearest" });
  };
  input.inputMode = "none";
  input.addEventListener("focus", open);
  input.addEventListener("click", open);
  return { pad, remove, keyboard };
}

/** The entry keeps the focus while its keys are pressed, so that a keyboard can go on writing. */
const QUIET = {
  type: "button",
  tabindex: -1,
  onpointerdown: (/** @type {Event} */ event) => event.preventDefault(),
};
