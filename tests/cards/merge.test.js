// Two phones, random work, random meetings: the fold must not depend on how the events came together.

import assert from "node:assert/strict";
import { test } from "node:test";

import { foldCard } from "../../site_overrides/assets/cards/record/fold.js";
import { dice, startedPhone } from "./helpers.js";

const PEOPLE = ["RB", "SL", "KM"];
const CASES = 120;

const pick = (roll, list) => list[Math.floor(roll() * list.length)];

function shuffled(roll, list) {
  const mixed = [...list];
  for (let last = mixed.length - 1; last > 0; last -= 1) {
    const other = Math.floor(roll() * (last + 1));
    [mixed[last], mixed[other]] = [mixed[other], mixed[last]];
  }
  return mixed;
}

async function happens(roll, phone, job) {
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
  ]);
  await phone.does(pick(roll, PEOPLE), kind, { job, step, ...more });
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
  let told = 0;
  for (let seed = 1; seed <= CASES; seed += 1) {
    const roll = dice(seed);
    const [a, b] = await twoPhones(roll);
    const wanted = foldCard([...a, ...b]);
    assert.deepEqual(foldCard([...b, ...a]), wanted, `seed ${seed}`);
    assert.deepEqual(foldCard(shuffled(roll, [...a, ...b, ...a])), wanted, `seed ${seed}`);
    told += (wanted.jobs[0]?.steps ?? []).filter((step) => step.shape !== "todo").length;
  }
  assert.ok(told > CASES / 2, "the histories do something");
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
