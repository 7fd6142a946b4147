// Two thousand changed card files: each is taken in and can be written again, or refused in a sentence.

import assert from "node:assert/strict";
import { test } from "node:test";

import { hashOf } from "../../site_overrides/assets/cards/record/canonical.js";
import { foldCard } from "../../site_overrides/assets/cards/record/fold.js";
import { readCard, writeCard } from "../../site_overrides/assets/cards/share/card-file.js";
import { dice } from "./helpers.js";
import { withPhoto } from "./shared.js";

const TIMES = Number(process.env.UNDERHOIST_TRIES ?? 1);
const VALUES = [
  null, true, false, 0, -1, 1e308, 2 ** 53, 0.1, "", "x", "<img src=x onerror=alert(1)>", "javascript:alert(1)",
  "java\tscript:alert(1)", "//elsewhere.example", "../../etc/passwd", "\u202e", "\ud800", "\x00", "x".repeat(5000),
  [], {}, [[]], [null], { length: 5 }, { toString: 1 }, { then: 1 }, { toJSON: "x" }, "2026-02-30", "1e999",
]; // prettier-ignore
const KEYS = ["constructor", "__proto__", "toString", "hasOwnProperty", "then", "length", "a/../b", "", "id", "kind", "step"];
const TEXTS = ["{", "}", "[", "]", '"', ",", ":", "1e999", "-", "null", "\\u0000", '"__proto__":{},', "\u2028", "9".repeat(400)];

/** Every place in the data, as the thing that holds it and its key. */
function placesIn(data, found = []) {
  for (const key of Object.keys(data)) {
    found.push([data, key]);
    if (typeof data[key] === "object" && data[key] !== null) placesIn(data[key], found);
  }
  return found;
}

/** Puts another value, key or neighbour at one place. */
function change(held, roll) {
  const pick = (list) => list[Math.floor(roll() * list.length)];
  const [holder, key] = pick(placesIn(held));
  const what = roll();
  if (what < 0.5) holder[key] = structuredClone(pick(VALUES));
  else if (what < 0.65) delete holder[key];
  else if (what < 0.8 && !Array.isArray(holder)) Object.defineProperty(holder, pick(KEYS), { value: structuredClone(pick(VALUES)), enumerable: true, configurable: true, writable: true });
  else if (what < 0.9 && Array.isArray(holder)) holder.push(structuredClone(holder[key]));
  else {
    const [other, name] = pick(placesIn(held));
    holder[key] = structuredClone(other[name]);
  }
}

/** Makes the hashes fit again, as one who means harm does. */
async function sealAgain(held) {
  let previous = "";
  for (const event of Array.isArray(held.events) ? held.events : []) {
    if (typeof event !== "object" || event === null) continue;
    const { hash: _hash, ...body } = { ...event, previous };
    Object.assign(event, { previous, hash: await hashOf(body) });
    previous = event.hash;
  }
}

async function changedFile(sound, roll) {
  if (roll() < 0.2) {
    const at = Math.floor(roll() * sound.length);
    return sound.slice(0, at) + TEXTS[Math.floor(roll() * TEXTS.length)] + sound.slice(at + Math.floor(roll() * 20));
  }
  const held = JSON.parse(sound);
  for (let left = 1 + Math.floor(roll() * 3); left > 0; left -= 1) change(held, roll);
  if (roll() < 0.8) await sealAgain(held).catch(() => null);
  return JSON.stringify(held);
}

test("a changed card file is taken in whole or refused in a sentence", async () => {
  const sound = writeCard((await withPhoto()).file);
  const outcomes = { taken: 0, refused: 0 };
  for (let seed = 1; seed <= 2000 * TIMES; seed += 1) {
    const written = await changedFile(sound, dice(seed));
    let read;
    try {
      read = await readCard(written);
    } catch (error) {
      assert.equal(error.name, "Refusal", `seed ${seed}: ${error.stack}`);
      assert.match(error.message, /[.?]$/, `seed ${seed}`);
      assert.ok(error.message.length < 400, `seed ${seed}: ${error.message.length}`);
      outcomes.refused += 1;
      continue;
    }
    const folded = JSON.stringify(foldCard(read.events));
    assert.ok(!folded.includes("NaN"), `seed ${seed}`);
    const again = writeCard(read);
    assert.equal(writeCard(await readCard(again)), again, `seed ${seed}`);
    outcomes.taken += 1;
  }
  assert.equal({}.polluted, undefined);
  assert.deepEqual(Object.keys(Object.prototype), []);
  assert.ok(outcomes.taken > 100 && outcomes.refused > 1000, JSON.stringify(outcomes));
});
