// From line and column, as findings have them, to a place in the text, and back. No browser needed.

/** @import { Edit, Finding } from "./types.js" */

/**
 * Offset of a place; columns count whole signs, where the browser counts some as two.
 *
 * @param {string} text
 * @param {number} line from 1
 * @param {number} column from 1
 */
export function offsetOf(text, line, column) {
  const start = lineStart(text, line);
  const end = lineEnd(text, start);
  const before = [...text.slice(start, end)].slice(0, column - 1).join("");
  return start + before.length;
}

/**
 * What to select for a finding: what was written if it stands there, else its line.
 *
 * @param {string} text
 * @param {Pick<Finding, "line" | "column" | "written">} finding
 * @returns {[number, number]}
 */
export function spanOf(text, { line, column, written }) {
  const start = lineStart(text, line);
  const end = lineEnd(text, start);
  const at = offsetOf(text, line, column);
  const plain = written.replace(/…$/, "");
  if (plain && text.startsWith(plain, at)) return [at, at + plain.length];
  const inLine = plain ? text.slice(start, end).indexOf(plain) : -1;
  if (inLine >= 0) return [start + inLine, start + inLine + plain.length];
  return [start, end];
}

/**
 * The text with an edit made.
 *
 * @param {string} text
 * @param {Edit} edit
 */
export function edited(text, edit) {
  const start = offsetOf(text, edit.line, edit.column);
  const end = offsetOf(text, edit.end_line, edit.end_column);
  return { start, end, text: text.slice(0, start) + edit.text + text.slice(end) };
}

/**
 * @param {string} text
 * @param {number} line from 1
 */
function lineStart(text, line) {
  let start = 0;
  for (let row = 1; row < line; row++) {
    const next = text.indexOf("\n", start);
    if (next < 0) return start;
    start = next + 1;
  }
  return start;
}

/**
 * @param {string} text
 * @param {number} start
 */
function lineEnd(text, start) {
  const end = text.indexOf("\n", start);
  return end < 0 ? text.length : end;
}
