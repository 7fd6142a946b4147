import assert from "node:assert/strict";
import { test } from "node:test";

import { kinOf, singular, slipsIn, squeezed, swapsOf, termsOf, tokenize, wordsOf } from "../../site_overrides/assets/search/terms.js";

const cases = (table, made) => {
  for (const [given, wanted] of table) test(`${made.name} ${JSON.stringify(given)}`, () => assert.deepEqual(made(given), wanted));
};

cases(
  [
    ["Drive the bush in.", ["drive", "the", "bush", "in"]],
    ["The maker's own", ["the", "maker", "own"]],
    ["120 lbf·in", ["120", "lbf·in"]],
    ["4.2 L, 1 1/2 turns", ["4.2", "l", "1", "1/2", "turns"]],
    ["120lbf", ["120", "lbf"]],
    ["M8 x 1.25", ["m8", "x", "1.25"]],
    ["Größe café", ["große", "cafe"]],
    ["(.*)[ \\ ^$", []],
    ["", []],
  ],
  wordsOf,
);
cases(
  [
    ["kick-down", ["kickdown", "kick", "down"]],
    ["lbf·in", ["lbfin", "lbf", "in"]],
    ["1-2", ["1-2", "1", "2"]],
    ["205/70", ["205/70"]],
    ["4.2", ["4.2"]],
    ["bushes", ["bush"]],
  ],
  termsOf,
);
cases(
  [
    ["bushes", "bush"], ["seals", "seal"], ["assemblies", "assembly"], ["boxes", "box"], ["glass", "glass"],
    ["bus", "bus"], ["axis", "axis"], ["valves", "valve"], ["gas", "gas"], ["oil", "oil"],
  ],
  singular,
);
cases([["leaking", ["leak", "leake"]], ["slipping", ["slipp", "slip", "slippe"]], ["leak", ["leaking", "leaked"]]], kinOf);
cases([["bnad", ["nbad", "band", "bnda"]], ["ab", ["ba"]], ["a", []]], swapsOf);
cases([["oil", 0], ["band", 1], ["bushing", 1], ["modulator", 2], ["205/70", 0]], slipsIn);
cases(
  [
    [["tail", "housings"], "tailhousing"],
    [["tail-housing"], "tailhousing"],
    [["tailhousing"], "tailhousing"],
    [["in", "lb"], "inlb"],
  ],
  squeezed,
);

test("ten thousand letters are read in a moment", () => {
  const began = performance.now();
  tokenize("a".repeat(10_000));
  tokenize("a-".repeat(5_000));
  tokenize("1/".repeat(5_000));
  assert.ok(performance.now() - began < 500);
});
