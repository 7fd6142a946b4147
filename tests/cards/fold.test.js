import assert from "node:assert/strict";
import { test } from "node:test";

import { foldCard, steps } from "../../site_overrides/assets/cards/record/fold.js";
import { samePerson } from "../../site_overrides/assets/cards/record/people.js";
import { startedPhone } from "./helpers.js";

const shapes = (phone) => steps(foldCard(phone.seen)).map((step) => step.shape);

test("a started card knows its vehicle, its complaint and the text it was given", async () => {
  const { phone } = await startedPhone();
  const card = foldCard(phone.seen);
  assert.equal(card.vehicle.identification, "Marlow Drover, green");
  assert.equal(card.complaint, "Shifts up late");
  assert.equal(card.jobs[0].text.title, "Set the front band");
  assert.deepEqual(shapes(phone), ["todo", "todo", "todo"]);
});

test("without its start there is no card", async () => {
  const { phone } = await startedPhone();
  assert.equal(foldCard(phone.seen.slice(1)), null);
});

test("a tick tells who and when", async () => {
  const { phone, job } = await startedPhone();
  const tick = await phone.does("RB", "tick", { job, step: 1 });
  const [step] = steps(foldCard(phone.seen));
  assert.deepEqual(step.done, { event: tick.id, who: "RB", at: tick.at });
  assert.equal(step.shape, "stored");
});

test("undo takes a tick back, and undoing the undo brings it back", async () => {
  const { phone, job } = await startedPhone();
  const tick = await phone.does("RB", "tick", { job, step: 1 });
  const undo = await phone.does("RB", "undo", { of: tick.id });
  assert.equal(shapes(phone)[0], "todo");
  await phone.does("RB", "undo", { of: undo.id });
  assert.equal(shapes(phone)[0], "stored");
});

test("the second check wants other initials, however they are written", async () => {
  const { phone, job } = await startedPhone();
  const tick = await phone.does("RB", "tick", { job, step: 3 });
  await phone.does("r.b.", "check", { job, step: 3, of: tick.id });
  assert.equal(shapes(phone)[2], "stored");
  await phone.does("SL", "check", { job, step: 3, of: tick.id });
  assert.equal(shapes(phone)[2], "checked");
});

test("a second check falls with the tick that it was for", async () => {
  const { phone, job } = await startedPhone();
  const tick = await phone.does("RB", "tick", { job, step: 3 });
  await phone.does("SL", "check", { job, step: 3, of: tick.id });
  await phone.does("RB", "undo", { of: tick.id });
  await phone.does("RB", "tick", { job, step: 3 });
  assert.equal(shapes(phone)[2], "stored");
});

test("a reading outside the limits that the card began with is told", async () => {
  const { phone, job } = await startedPhone();
  const reading = { reading: "set-band/turns-to-seat", when: "as found", unit: "turn" };
  await phone.does("RB", "reading", { job, step: 2, ...reading, written: "2 1/4", reason: "Worn" });
  const [taken] = steps(foldCard(phone.seen))[1].readings.map((one) => one.taken);
  assert.equal(taken.number, 2.25);
  assert.equal(taken.outside, true);
  await phone.does("RB", "reading", { job, step: 2, ...reading, written: "2", reason: "" });
  assert.equal(steps(foldCard(phone.seen))[1].readings[0].taken.outside, false);
});

test("not needed, handed back and answered", async () => {
  const { phone, job } = await startedPhone();
  await phone.does("RB", "not-needed", { job, step: 1, reason: "New nut" });
  const asked = await phone.does("RB", "hand-back", { job, step: 3, question: "Which mark?" });
  assert.deepEqual(shapes(phone), ["not-needed", "todo", "handed-back"]);
  await phone.does("SL", "answer", { job, step: 3, of: asked.id, answer: "The new one" });
  assert.deepEqual(shapes(phone), ["not-needed", "todo", "todo"]);
});

test("of two ticks on two phones the first stands, and its check with it", async () => {
  const { phone, job } = await startedPhone();
  const { phone: other } = await startedPhone("phone-b");
  other.seen = [];
  other.sees(phone.seen);
  const first = await phone.does("RB", "tick", { job, step: 3 });
  await phone.does("SL", "check", { job, step: 3, of: first.id });
  await other.does("KM", "tick", { job, step: 3 });
  phone.sees(other.seen);
  assert.equal(shapes(phone)[2], "checked");
});

test("events of a newer kind are kept and counted, those without their value are not folded", async () => {
  const { phone, job } = await startedPhone();
  await phone.does("RB", "weigh", { job, step: 1 });
  await phone.does("RB", "not-needed", { job, step: 1 });
  const card = foldCard(phone.seen);
  assert.equal(card.unknown, 1);
  assert.equal(steps(card)[0].shape, "todo");
});

test("events about a job or a step that is not there change nothing", async () => {
  const { phone } = await startedPhone();
  const before = foldCard(phone.seen);
  await phone.does("RB", "tick", { job: "no such job", step: 1 });
  assert.deepEqual(foldCard(phone.seen), before);
});

test("a closed card opens again by an undo", async () => {
  const { phone } = await startedPhone();
  const close = await phone.does("RB", "close", {});
  assert.equal(foldCard(phone.seen).closed.who, "RB");
  await phone.does("RB", "undo", { of: close.id });
  assert.equal(foldCard(phone.seen).closed, null);
});

test("initials mean the same person with and without dots and capitals", () => {
  assert.ok(samePerson("RB", " r.b. "));
  assert.ok(!samePerson("RB", "RD"));
});

test("a start without a vehicle or an add without a procedure does not break the page", async () => {
  const { phone } = await startedPhone();
  await phone.does("RB", "add", {});
  await phone.does("RB", "add", { procedure: "text" });
  assert.equal(foldCard(phone.seen).jobs.length, 1);
  await phone.does("RB", "start", { complaint: "c", fault: "" }, { card: "card-2" });
  assert.equal(foldCard(phone.seen.filter(({ card }) => card === "card-2")), null);
});
