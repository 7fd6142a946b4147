import assert from "node:assert/strict";
import { test } from "node:test";

import MiniSearch from "minisearch";

import { Lists, numbersOf } from "../../site_overrides/assets/search/lists.js";
import { SETTINGS } from "../../site_overrides/assets/search/terms.js";
import { Weigher } from "../../site_overrides/assets/search/weigh.js";
import { packed } from "../../src/underhoist/browser/search_lists.mjs";

const WORDS = ["band", "seal", "bush", "pan", "valve", "drum", "pump", "servo"];
const PLACES = 300;
const BOOST = { title: 8, said: 6, do: 2, prose: 1 };

/** A word now and then, the first ones most often; the same at every run. */
function textOf(place, length) {
  return Array.from({ length }, (_, i) => WORDS[Math.floor(((place * 7 + i * i * 13) % 64) ** 2 / 512) % WORDS.length]).join(" ");
}

function indexOf(count) {
  const index = new MiniSearch(SETTINGS);
  for (let id = 0; id < count; id++) {
    const own = id % 10 === 0 ? { title: textOf(id, 3), said: id % 20 === 0 ? textOf(id + 1, 5) : "" } : { do: textOf(id, 8) };
    index.add({ id, ...own, prose: textOf(id + 2, 5 + (id % 40)) });
  }
  return index;
}

const index = indexOf(PLACES);
const file = packed(index.toJSON());
const terms = file.terms.split(" ");
const exactly = (term, weight = 1, asked = 1) => [{ term: terms.indexOf(term), weight, asked }];

/** What MiniSearch itself gives each place. */
function full(queries) {
  const scores = new Float64Array(PLACES);
  const asIs = { tokenize: (text) => [text], processTerm: (term) => term };
  for (const { id, score } of index.search({ queries, combineWith: "OR" }, { boost: BOOST, ...asIs })) scores[id] = score;
  return scores;
}

function near(given, wanted) {
  assert.ok(wanted.some((score) => score > 0));
  wanted.forEach((score, place) => assert.ok(Math.abs(given[place] - score) <= 1e-9 * score, `${place}: ${given[place]}, ${score}`));
}

test("lists come back as they were counted, far steps and high counts too", () => {
  const held = { 0: { 3: 1, 40_000: 130 }, 3: { 0: 20_000, 16_500: 1 } };
  const given = {
    ...index.toJSON(), index: [["seal", { 3: { 5: 2 } }], ["band", held]], documentCount: 40_001, fieldLength: { 2: [300, undefined, 7] },
  };
  const made = packed(given);
  const read = new Lists(made);
  assert.equal(made.terms, "band seal");
  assert.equal(read.read(0, 9), 4);
  assert.deepEqual([[...read.places.slice(0, 4)], [...read.times.slice(0, 4)], [...read.ends]], [[3, 40_000, 0, 16_500], [1, 130, 20_000, 1], [2, 2, 2, 4]]);
  assert.deepEqual([read.count(0), read.count(1)], [4, 1]);
  assert.deepEqual(numbersOf(made.lengths).slice(8, 12), [300, 0, 7, 0]);
});

test("a step that says something else leaves the lists of all other terms as they were", () => {
  const given = index.toJSON();
  const changed = given.index.map(([term, held]) => [term, term === "drum" ? { ...held, 3: { ...held[3], 7: 150 } } : held]);
  const after = packed({ ...given, index: changed }).lists.split(" ");
  const others = file.lists.split(" ").filter((list, term) => list !== after[term]);
  assert.equal(others.length, 1);
});

test("a field that would go beyond the bound is left, with those after it", () => {
  const lists = new Lists(file);
  const term = terms.indexOf("band");
  const whole = lists.read(term, Infinity);
  const [title] = lists.ends;
  assert.ok(title > 0 && title < whole);
  assert.equal(lists.read(term, title), title);
  assert.deepEqual([...lists.ends], [title, title, title, title]);
  assert.equal(lists.read(term, title - 1), 0);
});

for (const word of WORDS) {
  test(`one term weighs as MiniSearch weighs it: ${word}`, () => {
    const weigher = new Weigher(file);
    weigher.weigh([[exactly(word, 0.6)]], Infinity);
    near(weigher.scores, full([{ queries: [word], boostTerm: () => 0.6 }]));
  });
}

test("several ways and several terms weigh as MiniSearch weighs them", () => {
  const weigher = new Weigher(file);
  const both = [exactly("seal", 0.9, 2), exactly("pump", 0.9, 4)];
  const { terms: found, cut } = weigher.weigh([[exactly("band")], both, [exactly("band", 0.4)]], Infinity);
  near(
    weigher.scores,
    full([
      { queries: ["band"] },
      { queries: ["seal", "pump"], combineWith: "AND", boostTerm: () => 0.9 },
      { queries: ["band"], boostTerm: () => 0.4 },
    ]),
  );
  assert.deepEqual([found.map((term) => terms[term]).toSorted(), cut], [["band", "pump", "seal"], false]);
});

test("no more entries are looked at than allowed, and it is said when there were more", () => {
  const ways = [[exactly("band")], [exactly("seal", 0.4, 2)], [exactly("pump", 0.3, 4), exactly("drum", 0.3, 8)]];
  const weigher = new Weigher(file);
  weigher.weigh(ways, Infinity);
  const whole = weigher.looked;
  for (let most = 0; most <= whole; most += 7) {
    const before = weigher.looked;
    const { cut } = weigher.weigh(ways, most);
    assert.ok(weigher.looked - before <= most, `${most}`);
    assert.equal(cut, most < whole);
  }
});
