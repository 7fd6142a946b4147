// The row of buttons that put pieces of a page in at the cursor.

import { el } from "../cards/kit/dom.js";
import { chooseName } from "./names-dialog.js";
import { asParagraph, nextStep, paragraph, reference } from "./pieces.js";

/** @import { Editor } from "./editor.js" */
/** @import { Name } from "./types.js" */

/** Where there is room, what is referred to most often has a button of its own. */
const NEAR = [
  ["Torque …", "torque"],
  ["Reading …", "reading"],
  ["Tool …", "tool"],
  ["Procedure …", "procedure"],
];

/**
 * @param {Editor} editor
 * @param {string[]} paragraphs the words that open a paragraph of a step
 * @param {() => Promise<Name[]>} names
 */
export function insertBar(editor, paragraphs, names) {
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
    ...paragraphs.map((word) => button(word, () => put(paragraph(word)))),
    ...NEAR.map(([label = "", scheme = ""]) => wide(button(label, () => void refer(scheme)))),
    button("Refer to …", () => void refer("")),
  );
  return bar;
}

/** @param {HTMLElement} made */
function wide(made) {
  made.classList.add("uh-desk__put--wide");
  return made;
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
