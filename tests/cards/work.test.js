import assert from "node:assert/strict";
import { test } from "node:test";

import { foldCard, steps } from "../../site_overrides/assets/cards/record/fold.js";
import { leftOf } from "../../site_overrides/assets/cards/record/left.js";
import { actsFor } from "../../site_overrides/assets/cards/steps/acts.js";
import { offInWords } from "../../site_overrides/assets/cards/steps/off-words.js";
import { PROCEDURE, Phone, VEHICLE, startedPhone } from "./helpers.js";

const labels = (phone, at) => actsFor(steps(foldCard(phone.seen))[at]).map(({ label }) => label);

/** A phone with a card whose only job takes these things off, one a step, and ticks every step. */
async function takingOff(...things) {
  const phone = new Phone("phone-a");
  await phone.does("RB", "start", { vehicle: VEHICLE, complaint: "c", fault: "" });
  const made = things.map((thing, at) => ({
    ...PROCEDURE.steps[0],
    number: at + 1,
    takes_off: [thing],
    puts_back: [],
  }));
  const procedure = { ...PROCEDURE, format: 2, calculators: [], steps: made };
  const job = (await phone.does("RB", "add", { procedure })).id;
  for (const { number } of made) await phone.does("RB", "tick", { job, step: number });
  return phone;
}

test("at most two acts stand beside the tick, whatever happened to the step", async () => {
  const { phone, job } = await startedPhone();
  assert.deepEqual(labels(phone, 2), ["Not needed", "Hand back"]);
  const tick = await phone.does("RB", "tick", { job, step: 3 });
  assert.deepEqual(labels(phone, 2), ["Second check", "Hand back"]);
  const asked = await phone.does("RB", "hand-back", { job, step: 3, question: "Which mark?" });
  assert.deepEqual(labels(phone, 2), ["Answer"]);
  await phone.does("SL", "answer", { job, step: 3, of: asked.id, answer: "The new one" });
  await phone.does("SL", "check", { job, step: 3, of: tick.id });
  assert.deepEqual(labels(phone, 2), ["Hand back"]);
});

test("a done step that was handed back is done again once it is answered", async () => {
  const { phone, job } = await startedPhone();
  await phone.does("RB", "tick", { job, step: 1 });
  const asked = await phone.does("RB", "hand-back", { job, step: 1, question: "Is it enough?" });
  assert.equal(steps(foldCard(phone.seen))[0].shape, "handed-back");
  await phone.does("SL", "answer", { job, step: 1, of: asked.id, answer: "It is" });
  assert.equal(steps(foldCard(phone.seen))[0].shape, "stored");
});

test("what is left of a procedure is told in words, and nothing where nothing is", async () => {
  const { phone, job } = await startedPhone();
  assert.equal(leftOf(foldCard(phone.seen).jobs[0].steps), "3 of 3 steps");
  for (const step of [1, 2, 3]) await phone.does("RB", "tick", { job, step });
  assert.equal(leftOf(foldCard(phone.seen).jobs[0].steps), "1 reading, 1 second check");
  assert.equal(leftOf([]), "");
});

test("a reading remembers the calculator that it came from", async () => {
  const { phone, job } = await startedPhone();
  const reading = { job, step: 2, reading: "set-band/turns-to-seat", when: "as found", reason: "" };
  await phone.does("RB", "reading", { ...reading, written: "1 1/2", from: "/calculators/band-set/" });
  assert.equal(steps(foldCard(phone.seen))[1].readings[0].taken.from, "/calculators/band-set/");
  await phone.does("RB", "reading", { ...reading, written: "1 3/4" });
  assert.equal(steps(foldCard(phone.seen))[1].readings[0].taken.from, "");
});

test("the line of what is off names four things and counts the others", async () => {
  const words = async (...things) => offInWords(foldCard((await takingOff(...things)).seen));
  assert.equal(await words("pan", "propshaft"), "Off: pan, propshaft.");
  assert.equal(await words("a", "b", "c", "d", "e"), "Off: a, b, c, d, e.");
  assert.equal(await words("a", "b", "c", "d", "e", "f"), "Off: a, b, c, d and 2 more.");
  const { phone } = await startedPhone();
  assert.equal(offInWords(foldCard(phone.seen)), "");
});
