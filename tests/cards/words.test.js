import assert from "node:assert/strict";
import { test } from "node:test";

import { foldCard, steps } from "../../site_overrides/assets/cards/record/fold.js";
import {
  checkRefused, leftInWords, nextOpen, openReasons, openSteps, ranges,
} from "../../site_overrides/assets/cards/record/left.js"; // prettier-ignore
import { isOutside, readNumber } from "../../site_overrides/assets/cards/record/numbers.js";
import { fetchList, offered } from "../../site_overrides/assets/cards/plan/order.js";
import { PROCEDURE, startedPhone } from "./helpers.js";

const READING = { reading: "set-band/turns-to-seat", when: "as found", reason: "" };

test("numbers as they are written on a card", () => {
  const read = { "12": 12, "0.5": 0.5, " 1  1/2 ": 1.5, "3/4": 0.75, "-3": -3, "−3": -3, "-1 1/2": -1.5 };
  for (const [typed, number] of Object.entries(read)) assert.deepEqual(readNumber(typed), { number });
});

test("what is no number is refused with what would be right", () => {
  const refused = {
    "": "Nothing is entered. Enter the number that you read.",
    "1,5": "“1,5” has a comma. Write 1.5.",
    "1/0": "“1/0” is not a number. Write it like 12, 0.5 or 1 1/2.",
    "12 mm": "“12 mm” is not a number. Write it like 12, 0.5 or 1 1/2.",
    ".5": "“.5” is not a number. Write it like 12, 0.5 or 1 1/2.",
    "1e3": "“1e3” is not a number. Write it like 12, 0.5 or 1 1/2.",
    ["9".repeat(400)]: `“${"9".repeat(20)}…” is too long for a number that was read.`,
    [`${"9".repeat(400)}/1`]: `“${"9".repeat(20)}…” is too long for a number that was read.`,
    Infinity: "“Infinity” is not a number. Write it like 12, 0.5 or 1 1/2.",
  };
  for (const [typed, wrong] of Object.entries(refused)) assert.deepEqual(readNumber(typed), { wrong });
});

test("limits are included, and rounding does not put a number outside", () => {
  const limits = { low: 1.25, high: 2 };
  assert.ok(!isOutside(1.25, limits) && !isOutside(2, limits));
  assert.ok(!isOutside(0.1 + 0.2, { low: null, high: 0.3 }));
  assert.ok(isOutside(1.24, limits) && isOutside(2.001, limits));
  assert.ok(!isOutside(1e9, { low: null, high: null }));
});

test("what is left is said in words", async () => {
  const { phone, job } = await startedPhone();
  const said = () => leftInWords(foldCard(phone.seen));
  assert.equal(said(), "Left: 3 of 3 steps.");
  const tick = await phone.does("RB", "tick", { job, step: 3 });
  assert.equal(said(), "Left: 2 of 3 steps, 1 second check.");
  await phone.does("RB", "hand-back", { job, step: 1, question: "Which?" });
  await phone.does("RB", "tick", { job, step: 2 });
  assert.equal(said(), "Left: 1 reading, 1 second check, 1 question.");
  await phone.does("RB", "reading", { job, step: 2, ...READING, written: "1 1/2" });
  await phone.does("SL", "check", { job, step: 3, of: tick.id });
  await phone.does("RB", "not-needed", { job, step: 1, reason: "New nut" });
  assert.equal(said(), "Nothing is left. Close the card.");
  await phone.does("RB", "close", {});
  assert.equal(said(), "Closed by RB.");
});

test("each open step says why", async () => {
  const { phone, job } = await startedPhone();
  await phone.does("RB", "tick", { job, step: 3 });
  await phone.does("RB", "hand-back", { job, step: 1, question: "Which mark?" });
  assert.deepEqual(openSteps(foldCard(phone.seen)).map(({ reasons }) => reasons), [
    ["Handed back: Which mark?"],
    ["No reading yet: Turns until the adjuster seats, as found.", "Not done, and no reason given."],
    ["Wants a second check by other initials."],
  ]);
});

test("the next open step is looked for onwards, then from the start", async () => {
  const { phone, job } = await startedPhone();
  await phone.does("RB", "tick", { job, step: 1 });
  const all = steps(foldCard(phone.seen));
  assert.deepEqual([nextOpen(all, -1), nextOpen(all, 1), nextOpen(all, 2)], [1, 2, 1]);
  assert.equal(nextOpen([], -1), 0);
  assert.deepEqual(openReasons(all[0]), []);
});

test("the same initials are refused as a second check, by name", async () => {
  const { phone, job } = await startedPhone();
  await phone.does("RB", "tick", { job, step: 3 });
  const step = steps(foldCard(phone.seen))[2];
  const words = "RB ticked this step. The second check wants somebody else's initials.";
  assert.equal(checkRefused(step, "rb"), words);
  assert.equal(checkRefused(step, "SL"), "");
});

test("step numbers are gathered", () => {
  assert.equal(ranges([]), "");
  assert.equal(ranges([4]), "Step 4");
  assert.equal(ranges([1, 2]), "Steps 1 and 2");
  assert.equal(ranges([1, 2, 3, 5, 8, 9]), "Steps 1 to 3, 5, 8 and 9");
});

test("a complaint offers its checks, then what mends it, then the rest for this family", () => {
  const entry = (id, ...family) => ({ id, family });
  const procedures = [entry("a", "any"), entry("b", "kestrel-3"), entry("c", "heron-4"), entry("d", "any")];
  const fault = { checks: ["b", "gone"], mends: ["d", "b"] };
  const ids = Object.entries(offered({ procedures }, "kestrel-3", fault)).map(([name, list]) => [
    name,
    list.map(({ id }) => id),
  ]);
  assert.deepEqual(ids, [["checks", ["b"]], ["mends", ["d"]], ["others", ["a"]]]);
});

test("each thing is fetched once", () => {
  const tool = { id: "torch", name: "Torch" };
  const text = { ...PROCEDURE, tools: [tool], consumables: ["Rags"], fluids: ["D2"] };
  const list = fetchList([{ text }, { text: { ...text, consumables: ["Rags", "Pen"] } }]);
  assert.deepEqual(list.tools, [tool]);
  assert.deepEqual(list.consumables.map(({ name }) => name), ["Rags", "D2", "Pen"]);
});
