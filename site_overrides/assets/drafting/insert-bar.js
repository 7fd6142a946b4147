// The row of buttons that put pieces of a page in at the cursor.

import { el } from "../cards/kit/dom.js";
import { chooseName } from "./names-dialog.js";
import { PARAGRAPHS, asParagraph, nextStep, reference } from "./pieces.js";

/** @import { Editor } from "./editor.js" */
/** @import { Name } from "./types.js" */

/**
 * @param {Editor} editor
 * @param {() => Promise<Name[]>} names
 */
export function insertBar(editor, names) {
  const put = (/** @type {string} */ piece) => {
    const { before, after } = editor.around;
    const parts = asParagraph(before, after, piece);
    editor.insert(parts.before + piece + parts.after);
    const end = before.length + parts.before.length + piece.length;
    editor.field.setSelectionRange(end, end);
  };
  const refer = async (/** @type {string} */ scheme) => {
    const { before, selected } = editor.around;
    const name = await chooseName(bar, names(), scheme);
    if (!name) return editor.field.focus();
    editor.field.setSelectionRange(before.length, before.length + selected.length);
    editor.insert(reference(name, selected));
  };
  const bar = el(
    "div",
    { class: "uh-desk__bar", role: "group", "aria-label": "Put in at the cursor" },
    button("Step", () => put(nextStep(editor.around.before))),
    ...PARAGRAPHS.map(({ label, text }) => button(label, () => put(text))),
    button("Torque …", () => void refer("torque")),
    button("Reading …", () => void refer("reading")),
    button("Tool …", () => void refer("tool")),
    button("Procedure …", () => void refer("procedure")),
    button("Refer to …", () => void refer("")),
  );
  return bar;
}

/**
 * @param {string} label
 * @param {() => void} act
 */
function button(label, act) {
  // The cursor must not leave the text, or the keyboard of a phone goes down.
  const keep = (/** @type {Event} */ event) => event.preventDefault();
  return el("button", { type: "button", class: "uh-desk__put", onpointerdown: keep, onmousedown: keep, onclick: act }, label);
}
