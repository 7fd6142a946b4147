// Two phones, random work, random meetings: the fold must not depend on how the events came together.

import assert from "node:assert/strict";
import { test } from "node:test";

import { foldCard } from "../../site_overrides/assets/cards/record/fold.js";
import { readCard, writeCard } from "../../site_overrides/assets/cards/share/card-file.js";
import { PROCEDURE, Phone, VEHICLE, dice, startedPhone } from "./helpers.js";
import { CARD, FIRST, SECOND, sharedCard } from "./shared.js";

const PEOPLE = ["RB", "SL", "KM"];
const CASES = 120;
const FILES = 60;

const pick = (roll, list) => list[Math.floor(roll() * list.length)];

function shuffled(roll, list) {
  const mixed = [...list];
  for (let last = mixed.length - 1; last > 0; last -= 1) {
    const other = Math.floor(roll() * (last + 1));
    [mixed[last], mixed[other]] = [mixed[other], mixed[last]];
  }
  return mixed;
}

/** The same procedure with other words, a step more and a step less. */
const LATER = [
  { ...PROCEDURE, revision: "later-1", steps: PROCEDURE.steps.slice(0, 2) },
  { ...PROCEDURE, revision: "later-2", steps: [...PROCEDURE.steps].reverse().map((step, at) => ({ ...step, number: at + 1 })) },
  {
    ...PROCEDURE,
    revision: "later-3",
    steps: PROCEDURE.steps.map((step) => (step.number === 1 ? { ...step, html: "<p>Do it anew.</p>" } : step)),
  },
]; // prettier-ignore

async function happens(roll, phone, job, { card = "card-1" } = {}) {
  const step = 1 + Math.floor(roll() * 3);
  const of = pick(roll, phone.seen).id;
  const written = pick(roll, ["1 1/2", "3", "", "x"]);
  const reading = { reading: "set-band/turns-to-seat", when: "as found", written, reason: "r" };
  const [kind, more] = pick(roll, [
    ["tick", {}],
    ["tick", {}],
    ["check", { of }],
    ["reading", reading],
    ["not-needed", { reason: "r" }],
    ["hand-back", { question: "q" }],
    ["answer", { of, answer: "a" }],
    ["undo", { of }],
    ["close", {}],
    ["from-a-newer-version", {}],
    ["renew", { procedure: pick(roll, LATER), words: ["The text changed"] }],
    ["add", { procedure: { ...PROCEDURE, id: "second" }, place: 1 + Math.floor(roll() * 3) }],
    ["vehicle", { vehicle: { ...VEHICLE, odometer: `${Math.floor(roll() * 9)} km` } }],
    ["fetch", { thing: pick(roll, ["rags", "pen"]) }],
    ["identify", { part: "seal", variant: pick(roll, ["Early", "Late"]), how: "h" }],
    ["finding", { what: "w", urgency: pick(roll, ["before driving", "to know"]) }],
    ["decide", { of, decision: pick(roll, ["done", "advised", "declined"]), note: "" }],
    ["complaint", { fault: "late-shifts", complaint: "c" }],
    ["result", { fault: "late-shifts", check: pick(roll, ["level", "hose"]), result: pick(roll, ["good", "bad", "not done", "?"]) }],
    ["calculation", { calculator: "shift-check", pattern: "late", rivals: ["low"], name: "n", summary: "s", from: "/f" }],
    ["reading", { ...reading, answer: { calculator: "signal-vacuum", pattern: "line", rivals: [] } }],
    ["hand-back", { fault: "late-shifts", question: "q" }],
    ["answer", { fault: "late-shifts", of, answer: "a" }],
    ["finding", { what: "w", urgency: "to know", fault: "late-shifts", cause: "hose", name: "n", likely: "about 9 in 10" }],
    ["photo", { finding: of, type: "image/jpeg", sha256: "0".repeat(64), width: 1, height: 1, bytes: 1 }],
  ]);
  const revision = pick(roll, ["", PROCEDURE.revision, ...LATER.map((text) => text.revision)]);
  await phone.does(pick(roll, PEOPLE), kind, { job, step, ...more }, { card, revision });
}

async function twoPhones(roll) {
  const { phone, job } = await startedPhone("phone-a");
  const { phone: other } = await startedPhone("phone-b");
  other.seen = [...phone.seen];
  for (let turn = 0; turn < 24; turn += 1) {
    await happens(roll, pick(roll, [phone, other]), job);
    if (roll() < 0.15) phone.sees(other.seen);
    if (roll() < 0.15) other.sees(phone.seen);
  }
  return [phone.seen, other.seen];
}

test(`in ${CASES} random histories the order of merging does not matter, and twice is once`, async () => {
  let [told, found] = [0, 0];
  for (let seed = 1; seed <= CASES; seed += 1) {
    const roll = dice(seed);
    const [a, b] = await twoPhones(roll);
    const wanted = foldCard([...a, ...b]);
    assert.deepEqual(foldCard([...b, ...a]), wanted, `seed ${seed}`);
    assert.deepEqual(foldCard(shuffled(roll, [...a, ...b, ...a])), wanted, `seed ${seed}`);
    found += [...wanted.faults.values()].filter(({ results, question }) => results.size > 0 || question).length;
    told += (wanted.jobs[0]?.steps ?? []).filter((step) => step.shape !== "todo").length;
  }
  assert.ok(told > CASES / 2, "the histories do something");
  assert.ok(found > CASES / 6, `the histories look for causes: ${found}`);
});

/** Two phones of one card, with ids that a file may carry. */
async function twoSharing(roll) {
  const { phone, job } = await sharedCard();
  const other = new Phone(SECOND);
  other.sees(phone.seen);
  for (let turn = 0; turn < 24; turn += 1) await happens(roll, pick(roll, [phone, other]), job, { card: CARD });
  return [phone.seen, other.seen];
}

test(`in ${FILES} random histories it does not matter which file is taken in first, or how often`, async () => {
  const pack = (events) => writeCard({ card: CARD, name: "n", events, elsewhere: [], pictures: new Map() });
  for (let seed = 1; seed <= FILES; seed += 1) {
    const roll = dice(1000 + seed);
    const files = (await twoSharing(roll)).map(pack);
    const [a, b] = await Promise.all(files.map(async (file) => (await readCard(file)).events));
    const onFirst = new Phone(FIRST);
    [a, b, b, a].forEach((events) => onFirst.sees(events));
    const onSecond = new Phone(SECOND);
    [b, a].forEach((events) => onSecond.sees(shuffled(roll, events)));
    assert.deepEqual(foldCard(onFirst.seen), foldCard(onSecond.seen), `seed ${seed}`);
    assert.equal(pack(onFirst.seen), pack(onSecond.seen), `seed ${seed}: the same card, the same bytes`);
  }
});

test("a clock set back does not change what came after what", async () => {
  const { phone, job } = await startedPhone();
  await phone.does("RB", "tick", { job, step: 1 });
  const undo = await phone.does("RB", "not-needed", { job, step: 1, reason: "New nut" });
  const setBack = phone.seen.map((event) =>
    event.id === undo.id ? { ...event, at: "2001-01-01T00:00:00.000Z" } : event,
  );
  assert.equal(foldCard(setBack).jobs[0].steps[0].shape, "not-needed");
});
