// The last look at a card before it is closed.

import assert from "node:assert/strict";
import { test } from "node:test";

import { foldCard } from "../../site_overrides/assets/cards/record/fold.js";
import {
  fluidLedger, leftOut, outsideReadings, stillOff,
} from "../../site_overrides/assets/cards/record/review.js"; // prettier-ignore
import { PROCEDURE, TURNS, startedPhone } from "./helpers.js";

const step = (number, more) => ({ ...PROCEDURE.steps[0], number, html: `<p>${number}</p>`, ...more });
const litres = (id, fluid) => ({ ...TURNS, id, unit: "L", unit_words: "litres", fluid, low: null, high: null });

async function cardWith(...steps) {
  const { phone } = await startedPhone();
  const numbered = steps.map((more, at) => step(at + 1, more));
  const procedure = { ...PROCEDURE, id: "pan", title: "Take the pan off", steps: numbered };
  const job = (await phone.does("RB", "add", { procedure })).id;
  const tick = (number) => phone.does("RB", "tick", { job, step: number });
  const read = (number, reading, written) =>
    phone.does("RB", "reading", { job, step: number, reading, when: "as found", written, reason: "r" });
  return { phone, job, tick, read, card: () => foldCard(phone.seen) };
}

test("what comes off is off only once its step is ticked, and until it is back on", async () => {
  const { tick, card } = await cardWith({ takes_off: ["Pan", "magnet"] }, { puts_back: ["magnet"] }, { puts_back: ["pan"] });
  assert.deepEqual(stillOff(card()), []);
  await tick(1);
  assert.deepEqual(stillOff(card()).map(({ thing }) => thing), ["Pan", "magnet"]);
  await tick(2);
  const [off, ...more] = stillOff(card());
  assert.deepEqual([off.thing, off.from, off.step.text.number, more], ["Pan", "Take the pan off", 1, []]);
  assert.deepEqual(off.waiting.map(({ text }) => text.number), [3]);
  await tick(3);
  assert.deepEqual(stillOff(card()), []);
});

test("a step that was not needed neither takes off nor puts back", async () => {
  const { phone, job, tick, card } = await cardWith({ takes_off: ["pan"] }, { puts_back: ["pan"] });
  await tick(1);
  await phone.does("RB", "not-needed", { job, step: 2, reason: "r" });
  assert.deepEqual(stillOff(card()).map(({ thing }) => thing), ["pan"]);
  assert.equal(leftOut(card()).length, 1);
});

test("taken off twice and put back once, it is still off", async () => {
  const { tick, card } = await cardWith({ takes_off: ["pan"] }, { puts_back: ["pan"] }, { takes_off: ["pan"] });
  for (const number of [1, 2, 3]) await tick(number);
  assert.deepEqual(stillOff(card()).map(({ step: { text } }) => text.number), [3]);
});

test("fluid out and fluid in are summed, readings without a number left out", async () => {
  const { read, card } = await cardWith(
    { readings: [litres("caught", "out"), litres("pan", "out")] },
    { readings: [litres("first", "in"), litres("top-up", "in"), litres("level", "")] },
  );
  await read(1, "caught", "3 1/2");
  await read(1, "pan", "");
  await read(2, "first", "3.2");
  await read(2, "top-up", "0.3");
  await read(2, "level", "9");
  const { totalIn, totalOut, mixed, words, came } = fluidLedger(card());
  assert.deepEqual([totalIn, totalOut, mixed, words, came.length], [3.5, 3.5, false, "litres", 1]);
});

test("sums of different units are not made", async () => {
  const pints = { ...litres("pints", "out"), unit: "pt US", unit_words: "US pints" };
  const { read, card } = await cardWith({ readings: [litres("a", "in"), pints] });
  await read(1, "a", "1");
  await read(1, "pints", "2");
  assert.equal(fluidLedger(card()).mixed, true);
});

test("readings outside their limits or without a number are told", async () => {
  const { read, card } = await cardWith({ readings: [TURNS, { ...TURNS, id: "b" }, { ...TURNS, id: "c" }] });
  await read(1, TURNS.id, "3");
  await read(1, "b", "");
  await read(1, "c", "1 1/2");
  assert.deepEqual(outsideReadings(card()).map(({ asked }) => asked.id), [TURNS.id, "b"]);
});

test("what an earlier text measured went in all the same, until it is measured anew", async () => {
  const { phone, job, read, card } = await cardWith({ readings: [litres("first", "in")] }, {});
  await read(1, "first", "3.2");
  const texts = [1, 2].map((number) => step(number, { readings: number === 2 ? [litres("first", "in")] : [], html: `<p>Newly ${number}</p>` }));
  const procedure = { ...PROCEDURE, id: "pan", title: "Take the pan off", revision: "later", steps: texts };
  await phone.does("RB", "renew", { job, procedure, words: [] });
  assert.equal(fluidLedger(card()).totalIn, 3.2);
  await read(2, "first", "1.1");
  assert.equal(fluidLedger(card()).totalIn, 1.1);
});
