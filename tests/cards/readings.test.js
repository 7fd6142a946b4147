import assert from "node:assert/strict";
import { test } from "node:test";

import { differenceWords } from "../../site_overrides/assets/cards/steps/difference.js";
import { DELETE, MINUS, POINT, mayBeNegative, pressed } from "../../site_overrides/assets/cards/steps/pad-keys.js";
import { readNumber } from "../../site_overrides/assets/cards/record/numbers.js";
import { dice } from "./helpers.js";

const typed = (...keys) => keys.reduce(pressed, "");

test("keys write the number that they name", () => {
  assert.equal(typed("1", "2", POINT, "5"), "12.5");
  assert.equal(typed(POINT, "5"), "0.5");
  assert.equal(typed("1", "1/2"), "1 1/2");
  assert.equal(typed("3/4"), "3/4");
  assert.equal(typed("0", "1/4"), "1/4");
  assert.equal(typed(MINUS, "2"), "−2");
  assert.equal(typed(MINUS, "1/2"), "−1/2");
  assert.equal(typed(MINUS, POINT, "5"), "−0.5");
});

test("a key that would make it no number changes nothing", () => {
  assert.equal(typed("1", POINT, "2", POINT, "3"), "1.23");
  assert.equal(typed("1", "1/2", "7"), "1 1/2");
  assert.equal(typed("1", "1/2", POINT), "1 1/2");
});

test("a fraction takes the place of another, and of decimals", () => {
  assert.equal(typed("1", "1/2", "3/4"), "1 3/4");
  assert.equal(typed("1", POINT, "5", "1/4"), "1 1/4");
});

test("delete takes a digit, or a fraction whole; minus is turned round", () => {
  assert.equal(typed("1", "2", DELETE), "1");
  assert.equal(typed("1", "3/4", DELETE), "1");
  assert.equal(typed(DELETE), "");
  assert.equal(typed("2", MINUS, MINUS), "2");
});

test("whatever is pressed, the entry is a number or the beginning of one", () => {
  const keys = [..."0123456789", POINT, MINUS, DELETE, "1/4", "1/2", "3/4"];
  for (let seed = 1; seed <= 300; seed += 1) {
    const throwDie = dice(seed);
    let entry = "";
    for (let count = 0; count < 12; count += 1) {
      entry = pressed(entry, keys[Math.floor(throwDie() * keys.length)]);
      const whole = /\d$/.test(entry) ? entry : `${entry}0`;
      assert.ok("number" in readNumber(whole), `“${entry}” of seed ${seed}`);
    }
  }
});

test("minus is offered only where the limits go below nought", () => {
  assert.equal(mayBeNegative({ low: -2, high: 5 }), true);
  assert.equal(mayBeNegative({ low: null, high: -1 }), true);
  assert.equal(mayBeNegative({ low: 0, high: 0.2 }), false);
  assert.equal(mayBeNegative({ low: null, high: null }), false);
});

const taken = (written) => ({ written, number: readNumber(written).number });
const difference = (found, left, unit) => differenceWords(taken(found), taken(left), unit);

test("as left against as found is told with the decimals that were read", () => {
  assert.equal(difference("0.30", "0.15", "millimetres"), "0.15 millimetres less than as found");
  assert.equal(difference("38", "41.5", "millimetres"), "3.5 millimetres more than as found");
  assert.equal(difference("1", "2", "litres"), "1 litre more than as found");
  assert.equal(difference("0.20", "0.2", "millimetres"), "the same as found");
});

test("turns differ by fractions of a turn", () => {
  assert.equal(difference("1 1/2", "1 3/4", "turns"), "1/4 turn more than as found");
  assert.equal(difference("3", "1 1/2", "turns"), "1 1/2 turns less than as found");
  assert.equal(difference("1 1/2", "1.5", "turns"), "the same as found");
  assert.equal(difference("1/3", "1", "turns"), "0.667 turns more than as found");
});

test("without two numbers there is no difference", () => {
  assert.equal(differenceWords(taken("1"), null, "turns"), "");
  assert.equal(differenceWords({ written: "", number: null }, taken("1"), "turns"), "");
});
