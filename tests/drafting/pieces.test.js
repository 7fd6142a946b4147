import assert from "node:assert/strict";
import { test } from "node:test";

import { newsOf } from "../../site_overrides/assets/drafting/manual-news.js";
import {
  asParagraph,
  fileName,
  matching,
  nextStep,
  paragraph,
  reference,
  wrongFile,
} from "../../site_overrides/assets/drafting/pieces.js";

test("a step takes the number after the last one above", () => {
  assert.equal(nextStep("## Steps\n\n1. One\n\n2. Two\n\n    Why: it is 3. of all\n"), "3. ");
  assert.equal(nextStep(""), "1. ");
});

test("a paragraph of a step is indented as the step's", () => {
  assert.equal(paragraph("Second check"), "    Second check: ");
});

test("a piece stands as a paragraph of its own", () => {
  assert.deepEqual(asParagraph("1. Do it.", "", "x"), { before: "\n\n", piece: "x", after: "" });
  assert.deepEqual(asParagraph("1. Do it.\n", "2. Next", "x"), { before: "\n", piece: "x", after: "\n\n" });
  assert.deepEqual(asParagraph("", "\nmore", "x"), { before: "", piece: "x", after: "" });
});

test("a reference takes the words that were selected", () => {
  const seat = { scheme: "torque", id: "band-seat" };
  assert.equal(reference(seat, ""), "<torque:band-seat>");
  assert.equal(reference(seat, " seat it "), "[seat it](torque:band-seat)");
  assert.equal(reference(seat, "a ] b"), "<torque:band-seat>");
});

test("names are found by any of their words", () => {
  const names = [
    { scheme: "torque", id: "band-seat", title: "Band adjuster seat" },
    { scheme: "tool", id: "torch", title: "Torch" },
  ];
  assert.deepEqual(matching(names, "seat band", "").map(({ id }) => id), ["band-seat"]);
  assert.deepEqual(matching(names, "", "tool").map(({ id }) => id), ["torch"]);
  assert.deepEqual(matching(names, "seat", "tool"), []);
});

test("a title becomes a file's name", () => {
  assert.equal(fileName("Set the front band (1-2)!"), "set-the-front-band-1-2");
  assert.equal(fileName("Prüfen & Größe"), "prufen-gro-e");
  assert.equal(fileName("???"), "");
});

test("a name that the manual cannot have is refused", () => {
  for (const file of ["a.md", "kestrel-3/set-band.md"]) assert.equal(wrongFile(file), "");
  for (const file of ["", "a", "A.md", "../a.md", "a//b.md", "/a.md", "a b.md", "-a.md"]) {
    assert.match(wrongFile(file), /is no name for a page\. Write lower-case letters, digits and hyphens/);
  }
});

test("the draft is told what became of the manual's page", () => {
  const draft = (basis, text = "mine") => ({ basis, text });
  assert.equal(newsOf(draft("old"), "old"), "");
  assert.equal(newsOf(draft(null), undefined), "");
  assert.equal(newsOf(draft("old"), "new"), "The manual’s page has changed since this draft was begun.");
  assert.equal(newsOf(draft(null), "new"), "The manual has a page of this name since this draft was begun.");
  assert.equal(newsOf(draft("old"), undefined), "The manual’s page was taken away since this draft was begun.");
  assert.equal(newsOf(draft("old", "new"), "new"), "The manual has this text now: the draft has done its work.");
  assert.equal(newsOf(draft("old", "old"), "old"), "");
});
