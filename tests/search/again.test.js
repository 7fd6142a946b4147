import assert from "node:assert/strict";
import { test } from "node:test";

import MiniSearch from "minisearch";

import { SETTINGS } from "../../site_overrides/assets/search/terms.js";
import { merged } from "../../src/underhoist/browser/search_again.mjs";
import { packed } from "../../src/underhoist/browser/search_lists.mjs";

// What is compared with is MiniSearch's own count of all pages.

const WORDS = ["band", "seal", "bush", "pan", "valve", "drum", "pump", "servo", "kick-down", "4.2"];
const has = (field, isPage) => (isPage ? ["title", "said", "prose"] : ["do", "prose"]).includes(field);

/** A draw from 0 to 1 that is the same at every run. */
function chanceOf(seed) {
  let state = seed + 1;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

function textOf(chance) {
  return Array.from({ length: Math.floor(chance() * 12) }, () => WORDS[Math.floor(chance() ** 2 * WORDS.length)]).join(" ");
}

function pageOf(chance, name) {
  const parts = Array.from({ length: Math.floor(chance() * 5) }, () => ({ do: textOf(chance), prose: textOf(chance) }));
  return [{ title: `${textOf(chance)} only${name}`, said: chance() < 0.2 ? textOf(chance) : "", prose: textOf(chance) }, ...parts];
}

function counted(pages) {
  const index = new MiniSearch(SETTINGS);
  for (const [id, place] of pages.flat().entries()) index.add({ id, ...place });
  return index.toJSON();
}

for (let seed = 0; seed < 40; seed++) {
  test(`some pages anew, some gone, some elsewhere: draw ${seed}`, () => {
    const chance = chanceOf(seed * 7919);
    const old = Array.from({ length: 30 }, (_, i) => pageOf(chance, `o${i}x`));
    let stays = old.map((_, i) => (chance() < 0.2 ? undefined : i)).filter(() => chance() > 0.1);
    if (seed % 3 === 0) stays = stays.toSorted(() => chance() - 0.5);
    if (seed === 1) stays = [];
    if (seed === 2) stays = old.map((_, i) => i);
    const pages = stays.map((page, i) => (page === undefined ? pageOf(chance, `n${i}x`) : old[page]));
    const fresh = pages.filter((_, i) => stays[i] === undefined);
    const sizes = pages.map(({ length }) => length);
    const before = old.map(({ length }) => length);
    assert.deepEqual(merged(packed(counted(old)), counted(fresh), { stays, sizes, before }, has), packed(counted(pages)));
  });
}
