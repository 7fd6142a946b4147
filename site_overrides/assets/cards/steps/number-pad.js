// Large keys for one thumb. The phone's own keyboard stays away until it is asked for.

import { drawing, el } from "../kit/dom.js";
import { DELETE, FRACTIONS, MINUS, POINT, mayBeNegative, pressed } from "./pad-keys.js";

/** @import { ReadingAsked } from "../types.js" */

const KEYBOARD = "keyboard";

/** @type {Record<string, string>} */
const SPOKEN = { [POINT]: "Point", [MINUS]: "Minus", [DELETE]: "Delete", [KEYBOARD]: "Use the phone’s keyboard" };

/** Drawn, because a phone's fonts may lack the signs. @type {Record<string, string>} */
const SIGNS = {
  [DELETE]: "M9 5h13v14H9l-6-7zM12.5 9.5l5 5M17.5 9.5l-5 5",
  [KEYBOARD]: "M2 6h20v12H2zM5.5 9.5h1M9.5 9.5h1M13.5 9.5h1M17.5 9.5h1M5.5 14.5h13",
};

/** The entry keeps the focus while its keys are pressed, so that a keyboard can go on writing. */
const QUIET = {
  type: "button",
  tabindex: -1,
  onpointerdown: (/** @type {Event} */ event) => event.preventDefault(),
};

/**
 * The pad of an entry, hidden until the entry is entered, and the key that deletes. Who works with a
 * keyboard writes into the entry itself, so the pad is not among what Tab reaches.
 *
 * @param {HTMLInputElement} input
 * @param {ReadingAsked} asked
 */
export function numberPad(input, asked) {
  const turns = asked.unit === "turn";
  const press = (/** @type {string} */ name) => () => {
    if (name === KEYBOARD) return ordinary();
    input.value = pressed(input.value, name);
    input.dispatchEvent(new Event("input", { bubbles: true }));
  };
  const ordinary = () => {
    pad.hidden = true;
    input.inputMode = turns ? "text" : "decimal";
    input.blur(); // the phone looks at the mode when the entry is entered
    input.focus();
  };
  const rows = keysFor(turns, mayBeNegative(asked));
  const keys = rows.flatMap((row) => row.map((name) => padKey(name, rows[0].length - row.length + 1, press(name))));
  const shape = { class: "uh-pad", "data-columns": rows[0].length, hidden: true };
  const pad = el("div", { ...shape, role: "group", "aria-label": "Number pad" }, ...keys);
  const open = () => {
    if (!pad.hidden || input.inputMode !== "none") return;
    pad.hidden = false;
    input.closest("form")?.querySelector(".uh-card__answers")?.scrollIntoView({ block: "nearest" });
  };
  input.inputMode = "none";
  input.addEventListener("focus", open);
  input.addEventListener("click", open);
  return { pad, remove: padKey(DELETE, 1, press(DELETE)) };
}

/**
 * The keys by row; in the last one nought takes the room that is left.
 *
 * @param {boolean} turns are counted in fractions
 * @param {boolean} negative
 */
function keysFor(turns, negative) {
  const digits = ["123", "456", "789"].map((row) => [...row]);
  if (turns) {
    const minus = negative ? [MINUS] : [];
    return [...digits.map((row, at) => [...row, FRACTIONS[at]]), [KEYBOARD, ...minus, "0", POINT]];
  }
  if (!negative) return [...digits, [KEYBOARD, "0", POINT]];
  return [...digits.map((row, at) => [...row, [MINUS, POINT, KEYBOARD][at]]), ["0"]];
}

/**
 * @param {string} name
 * @param {number} room columns that nought takes
 * @param {() => void} press
 */
function padKey(name, room, press) {
  const label = SPOKEN[name] ?? (FRACTIONS.includes(name) ? `and ${name} turn` : name);
  const sign = SIGNS[name] ? drawing("uh-pad__sign", "0 0 24 24", { "uh-pad__line": SIGNS[name] }) : name;
  const key = { ...QUIET, class: `uh-pad__key uh-pad__key--${SIGNS[name] ? name : "plain"}`, "aria-label": label };
  return el("button", { ...key, "data-room": name === "0" ? room : 1, onclick: press }, sign);
}
