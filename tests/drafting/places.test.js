import assert from "node:assert/strict";
import { test } from "node:test";

import { edited, offsetOf, spanOf } from "../../site_overrides/assets/drafting/places.js";

const TEXT = "---\ntitle: A\n---\n\n1. Set it to 12 lbf·ft.\n";

test("a place is found by line and column", () => {
  assert.equal(offsetOf(TEXT, 1, 1), 0);
  assert.equal(TEXT.slice(offsetOf(TEXT, 5, 14)), "12 lbf·ft.\n");
  assert.equal(offsetOf(TEXT, 5, 999), TEXT.length - 1);
  assert.equal(offsetOf(TEXT, 99, 1), TEXT.length);
});

test("a sign that the browser counts as two is one column", () => {
  assert.equal(offsetOf("🔧🔧 x", 1, 4), 5);
});

test("what was written is selected", () => {
  const [start, end] = spanOf(TEXT, { line: 5, column: 14, written: "12 lbf·ft" });
  assert.equal(TEXT.slice(start, end), "12 lbf·ft");
});

test("what was written is looked for in its line where the column is that of the whole", () => {
  const [start, end] = spanOf(TEXT, { line: 5, column: 1, written: "12 lbf·ft" });
  assert.equal(TEXT.slice(start, end), "12 lbf·ft");
});

test("the line is selected where what was written does not stand there", () => {
  const [start, end] = spanOf(TEXT, { line: 5, column: 1, written: "elsewhere" });
  assert.equal(TEXT.slice(start, end), "1. Set it to 12 lbf·ft.");
  assert.deepEqual(spanOf("", { line: 1, column: 1, written: "" }), [0, 0]);
});

test("what was cut for its length is selected as far as it is known", () => {
  const [start, end] = spanOf("abcdef\n", { line: 1, column: 1, written: "abc…" });
  assert.equal("abcdef".slice(start, end), "abc");
});

test("an edit is made in its place", () => {
  const edit = { file: "a.md", line: 2, column: 8, end_line: 2, end_column: 9, text: "B" };
  assert.equal(edited(TEXT, edit).text, TEXT.replace("title: A", "title: B"));
  const over = { file: "a.md", line: 1, column: 4, end_line: 2, end_column: 1, text: "\n\n" };
  assert.equal(edited(TEXT, over).text, TEXT.replace("---\n", "---\n\n"));
});
