// What the phone keeps of a complaint: read back whatever was stored, changed without losing anything.

import assert from "node:assert/strict";
import { test } from "node:test";

import {
  begunAgain,
  broughtBack,
  familyToBegin,
  readFindings,
  withResult,
  withoutResult,
} from "../../site_overrides/assets/fault/kept.js";

const DATA = {
  families: [{ id: "wren", title: "Wren" }, { id: "robin", title: "Robin" }],
  by_family: { wren: { checks: { hose: {}, gauge: {} } }, robin: { checks: { hose: {} } } },
}; // prettier-ignore
const EMPTY = { results: [], isStopped: false, before: [] };
const good = (check) => ({ check, result: "good" });

test("nothing was kept: every family begins empty", () => {
  for (const kept of [undefined, null, 3, "x", [], { wren: 3 }, { wren: { results: "hose" } }]) {
    assert.deepEqual(readFindings(kept, DATA), { wren: EMPTY, robin: EMPTY });
  }
});

test("results are kept for each family by itself", () => {
  const kept = { wren: { results: [good("hose"), good("gauge")], isStopped: true }, finch: EMPTY };
  const read = readFindings(kept, DATA);
  assert.deepEqual(read.wren, { results: [good("hose"), good("gauge")], isStopped: true, before: [] });
  assert.deepEqual(read.robin, EMPTY);
  assert.deepEqual(Object.keys(read), ["wren", "robin"]);
});

test("what the manual no longer has, or nobody could have given, is left out", () => {
  const results = [good("ear"), good("hose"), { check: "gauge", result: "fine" }, { check: "hose", result: "bad" }, 3];
  assert.deepEqual(readFindings({ wren: { results } }, DATA).wren.results, [good("hose")]);
});

test("the family used last goes first where the complaint knows it", () => {
  assert.equal(familyToBegin("robin", DATA), "robin");
  assert.equal(familyToBegin("finch", DATA), "wren");
  assert.equal(familyToBegin(undefined, { families: [] }), "");
});

test("a second result of a check takes the place of the first, as the newest", () => {
  const one = withResult(withResult(EMPTY, good("hose")), good("gauge"));
  const two = withResult(one, { check: "hose", result: "bad" });
  assert.deepEqual(two.results, [good("gauge"), { check: "hose", result: "bad" }]);
});

test("any result can be undone, and with it goes the stop", () => {
  const stopped = { results: [good("hose"), good("gauge")], isStopped: true, before: [] };
  assert.deepEqual(withoutResult(stopped, "hose"), { results: [good("gauge")], isStopped: false, before: [] });
});

test("what was begun again can be brought back until the next result", () => {
  const again = begunAgain({ results: [good("hose")], isStopped: true, before: [] });
  assert.deepEqual(again, { results: [], isStopped: false, before: [good("hose")] });
  assert.deepEqual(broughtBack(again), { results: [good("hose")], isStopped: false, before: [] });
  assert.deepEqual(withResult(again, good("gauge")).before, []);
});
