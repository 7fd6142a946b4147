// Fault finding on a card: complaints, results, and what follows from readings and calculators.

import assert from "node:assert/strict";
import { test } from "node:test";

import { countedResults } from "../../site_overrides/assets/cards/fault/counted.js";
import { originWords } from "../../site_overrides/assets/cards/fault/words.js";
import { foldCard } from "../../site_overrides/assets/cards/record/fold.js";
import { PROCEDURE, Phone, TURNS, VEHICLE } from "./helpers.js";

const FAULT = "late-shifts";
const reading = { kind: "reading", procedure: "set-band", reading: TURNS.id };
const shifts = { kind: "calculator", calculator: "shift-check", bad: ["late-light", "late-all"], good: ["in-window"] };
const FAMILY = {
  complaint: {
    causes: [],
    checks: [
      { id: "level", name: "Level, colour and smell", minutes: 15, access: "engine running" },
      { id: "band", name: "Turns of the band", minutes: 25, access: "on the hoist" },
      { id: "drive", name: "Road test", minutes: 30, access: "road test" },
    ],
  },
  checks: {
    level: { procedures: [], decided_by: [] },
    band: { procedures: [], decided_by: [reading] },
    drive: { procedures: [], decided_by: [shifts] },
  },
  causes: {},
};

async function complained() {
  const phone = new Phone("phone-a");
  await phone.does("RB", "start", { vehicle: VEHICLE, complaint: "It hangs on", fault: FAULT });
  const job = (await phone.does("RB", "add", { procedure: PROCEDURE })).id;
  const says = (check, result, more = {}) => phone.does("RB", "result", { fault: FAULT, check, result, ...more });
  const reads = (written, more = {}) =>
    phone.does("SL", "reading", { job, step: 2, reading: TURNS.id, when: "as found", written, reason: "", ...more });
  const calculates = (pattern, rivals = []) =>
    phone.does("KM", "calculation", { calculator: "shift-check", pattern, rivals, name: "Shift check", summary: "Late.", from: "/c" });
  const counted = (family = FAMILY) => {
    const card = foldCard(phone.seen);
    return countedResults(card, card.faults.get(FAULT), family);
  };
  const told = (family) => counted(family).map(({ check, result }) => [check, result]);
  return { phone, job, says, reads, calculates, counted, told, card: () => foldCard(phone.seen) };
}

test("a card that began with a complaint of the manual has it, and no other card has", async () => {
  const { card } = await complained();
  assert.deepEqual([...card().faults.values()].map(({ id, complaint }) => [id, complaint]), [[FAULT, "It hangs on"]]);
});

test("a result tells who and when; the latest stands, and undo brings the earlier one back", async () => {
  const { says, counted, told, phone } = await complained();
  await says("level", "good", { name: "Level", minutes: 10 });
  const bad = await says("level", "bad");
  assert.deepEqual(told(), [["level", "bad"]]);
  assert.deepEqual(counted()[0].mark, { event: bad.id, who: "RB", at: bad.at });
  await phone.does("RB", "undo", { of: bad.id });
  assert.deepEqual(counted().map(({ result, name, minutes }) => [result, name, minutes]), [["good", "Level", 10]]);
});

test("a result that is none of the three, or of a complaint that is not on the card, changes nothing", async () => {
  const { says, told, phone } = await complained();
  await says("level", "perhaps");
  await phone.does("RB", "result", { fault: "leaks", check: "level", result: "bad" });
  assert.deepEqual(told(), []);
});

test("a second complaint is taken up once, with results of its own, and goes with its undo", async () => {
  const { phone, card, says } = await complained();
  const taken = await phone.does("RB", "complaint", { fault: "leaks", complaint: "It leaves a puddle" });
  await phone.does("SL", "complaint", { fault: "leaks", complaint: "again" });
  await phone.does("RB", "result", { fault: "leaks", check: "wipe", result: "bad" });
  await says("level", "good");
  const sizes = () => [...card().faults.values()].map(({ id, complaint, results }) => [id, complaint, results.size]);
  assert.deepEqual(sizes(), [[FAULT, "It hangs on", 1], ["leaks", "It leaves a puddle", 1]]);
  await phone.does("RB", "undo", { of: taken.id });
  assert.deepEqual(sizes()[1].slice(0, 2), ["leaks", "again"]);
});

test("a reading outside its limits is bad, inside good, and an undone one counts no longer", async () => {
  const { reads, told, phone, counted } = await complained();
  await reads("1 1/2");
  assert.deepEqual(told(), [["band", "good"]]);
  const outside = await reads("2 1/4");
  assert.deepEqual(told(), [["band", "bad"]]);
  assert.equal(originWords(counted()[0]), "from the reading “Turns until the adjuster seats, as found”, 2 1/4 turns");
  await phone.does("SL", "undo", { of: outside.id });
  assert.deepEqual(told(), [["band", "good"]]);
});

test("a reading that could not be read, has no limits, or belongs to a step not needed decides nothing", async () => {
  const { reads, told, phone, job } = await complained();
  await reads("", { reason: "Seized" });
  assert.deepEqual(told(), []);
  await reads("3");
  await phone.does("RB", "not-needed", { job, step: 2, reason: "r" });
  assert.deepEqual(told(), []);
  const free = { ...TURNS, low: null, high: null, limits_text: "" };
  const steps = PROCEDURE.steps.map((step) => (step.number === 2 ? { ...step, readings: [free] } : step));
  const other = (await phone.does("RB", "add", { procedure: { ...PROCEDURE, steps } })).id;
  await reads("3", { job: other });
  assert.deepEqual(told(), []);
});

test("good needs every reading of the procedure, bad only one", async () => {
  const two = { ...TURNS, id: "set-band/second" };
  const steps = PROCEDURE.steps.map((step) => (step.number === 2 ? { ...step, readings: [TURNS, two] } : step));
  const { phone, reads, told } = await complained();
  const job = (await phone.does("RB", "add", { procedure: { ...PROCEDURE, id: "other", steps } })).id;
  const deciders = ["second", TURNS.id].map((id) => ({ ...reading, procedure: "other", reading: id }));
  const named = deciders.map((one) => (one.reading === "second" ? { ...one, reading: two.id } : one));
  const family = { ...FAMILY, checks: { ...FAMILY.checks, band: { procedures: [], decided_by: named } } };
  await reads("2", { job });
  assert.deepEqual(told(family), []);
  await reads("2", { job, reading: two.id });
  assert.deepEqual(told(family), [["band", "good"]]);
  await reads("5", { job, reading: two.id });
  assert.deepEqual(told(family), [["band", "bad"]]);
});

test("what was found before the work goes before what was left after it", async () => {
  const { phone, told } = await complained();
  const steps = PROCEDURE.steps.map((step) => (step.number === 2 ? { ...step, readings: [{ ...TURNS, when: "both" }] } : step));
  const job = (await phone.does("RB", "add", { procedure: { ...PROCEDURE, steps } })).id;
  const read = (when, written) =>
    phone.does("RB", "reading", { job, step: 2, reading: TURNS.id, when, written, reason: "" });
  await read("as left", "1 1/2");
  assert.deepEqual(told(), [["band", "good"]]);
  await read("as found", "3");
  assert.deepEqual(told(), [["band", "bad"]]);
});

test("a calculator's kept answer decides by its pattern, and only where all rivals agree", async () => {
  const { calculates, told, phone } = await complained();
  await calculates("late-light");
  assert.deepEqual(told(), [["drive", "bad"]]);
  await calculates("late-light", ["late-all"]);
  assert.deepEqual(told(), [["drive", "bad"]]);
  for (const [pattern, rivals] of [["late-light", ["early"]], ["in-window", ["late-all"]], ["something", []]]) {
    const last = await calculates(pattern, rivals);
    assert.deepEqual(told(), [], pattern);
    await phone.does("KM", "undo", { of: last.id });
  }
  const good = await calculates("in-window");
  assert.deepEqual(told(), [["drive", "good"]]);
  await phone.does("KM", "undo", { of: good.id });
  assert.deepEqual(told(), [["drive", "bad"]]);
});

test("an answer that came with a reading counts as well", async () => {
  const { reads, told } = await complained();
  await reads("1 1/2", { from: "/c", answer: { calculator: "shift-check", pattern: "late-all", rivals: [] } });
  assert.deepEqual(told().sort(), [["band", "good"], ["drive", "bad"]]);
  await reads("1 1/2", { answer: { pattern: 3 } });
  assert.deepEqual(told(), [["band", "good"]]);
});

test("a person's own result goes before a reading, and the reading counts again once it is undone", async () => {
  const { reads, says, told, phone } = await complained();
  await reads("3");
  const own = await says("band", "not done");
  assert.deepEqual(told(), [["band", "not done"]]);
  await phone.does("RB", "undo", { of: own.id });
  assert.deepEqual(told(), [["band", "bad"]]);
});

test("without the manual the results that people gave are still there, by the names they had", async () => {
  const { says, reads, counted } = await complained();
  await reads("3");
  await says("hose", "bad", { name: "The hose", minutes: 5 });
  assert.deepEqual(counted(null).map(({ name, minutes, result }) => [name, minutes, result]), [["The hose", 5, "bad"]]);
});

test("a question about the search goes to the senior tech and is answered like a step's", async () => {
  const { phone, card } = await complained();
  const asked = await phone.does("RB", "hand-back", { job: "", step: 0, fault: FAULT, question: "None of these?" });
  assert.equal(card().faults.get(FAULT).question.question, "None of these?");
  await phone.does("SL", "answer", { job: "", step: 0, fault: FAULT, of: asked.id, answer: "Look at the cable" });
  assert.equal(card().faults.get(FAULT).answer.answer, "Look at the cable");
  await phone.does("RB", "undo", { of: asked.id });
  assert.deepEqual([card().faults.get(FAULT).question, card().faults.get(FAULT).answer], [null, null]);
});
