// A newer text of a procedure: what is said of it, and what it does to a card that takes it.

import assert from "node:assert/strict";
import { test } from "node:test";

import { foldCard, steps } from "../../site_overrides/assets/cards/record/fold.js";
import { openSteps } from "../../site_overrides/assets/cards/record/left.js";
import { matchSteps } from "../../site_overrides/assets/cards/record/matching.js";
import { otherChanges, pairSteps, torqueChanges } from "../../site_overrides/assets/cards/renew/compare.js";
import { inWords } from "../../site_overrides/assets/cards/renew/news.js";
import { wordsBetween } from "../../site_overrides/assets/cards/renew/told.js";
import { PROCEDURE, Phone, TURNS, startedPhone } from "./helpers.js";

const step = (number, words, more = {}) => ({
  number, html: `<p>${words}</p>`, text: words, torques: [], cautions: [], readings: [],
  wants_second_check: false, takes_off: [], puts_back: [], ...more,
}); // prettier-ignore

const list = (...words) => words.map((word, at) => step(at + 1, word));
const text = (...words) => ({ ...PROCEDURE, steps: list(...words) });
const seat = (value) => ({ torques: [{ id: "band-seat", name: "Band adjuster seat", value }] });

const MATCHES = {
  "the same text": [["a", "b", "c"], ["a", "b", "c"], [0, 1, 2]],
  "a step more": [["a", "b"], ["a", "new", "b"], [0, -1, 1]],
  "a step less": [["a", "b", "c"], ["a", "c"], [0, 2]],
  "a step that moved": [["a", "b", "c"], ["c", "a", "b"], [2, 0, 1]],
  "the first of two same steps gone": [["wipe", "fit", "wipe"], ["fit", "wipe"], [1, 2]],
  "the last of two same steps gone": [["wipe", "fit", "wipe", "end"], ["wipe", "fit", "end"], [0, 1, 3]],
  "two same steps moved: neither is guessed": [["x", "x", "a", "b"], ["a", "b", "x", "x"], [2, 3, -1, -1]],
}; // prettier-ignore

for (const [what, [earlier, newer, wanted]] of Object.entries(MATCHES)) {
  test(`steps are matched: ${what}`, () => assert.deepEqual(matchSteps(list(...earlier), list(...newer)), wanted));
}

test("another torque or another limit makes it another step; another link or class does not", () => {
  const one = [step(1, "Seat it", seat("120 pound-force inches"))];
  assert.deepEqual(matchSteps(one, [step(1, "Seat it", seat("108 pound-force inches"))]), [-1]);
  assert.deepEqual(matchSteps([step(1, "a", { readings: [TURNS] })], [step(1, "a", { readings: [{ ...TURNS, high: 3 }] })]), [-1]);
  assert.deepEqual(matchSteps([step(1, "a")], [step(1, "a", { html: '<p class="uh-x"><a href="../b/">a</a></p>' })]), [0]);
});

test("both texts stand beside each other, what is gone where it stood", () => {
  const told = (earlier, newer) =>
    pairSteps(list(...earlier), list(...newer)).map(({ kind, earlier: was, newer: is }) => [kind, was?.text, is?.text]);
  assert.deepEqual(told(["a", "b", "c"], ["a", "B", "c"]), [
    ["same", "a", "a"], ["changed", "b", "B"], ["same", "c", "c"],
  ]); // prettier-ignore
  assert.deepEqual(told(["a", "b", "c"], ["a", "c", "d"]), [
    ["same", "a", "a"], ["gone", "b", undefined], ["same", "c", "c"], ["new", undefined, "d"],
  ]); // prettier-ignore
  assert.deepEqual(told(["a"], ["z", "a"]), [["new", undefined, "z"], ["same", "a", "a"]]);
});

test("a torque that changed is said first, with its unit in words, and once", () => {
  const earlier = { ...text("x"), steps: [step(1, "x", seat("120 pound-force inches")), step(2, "old")] };
  const newer = { ...text("x"), steps: [step(1, "x", seat("108 pound-force inches")), step(2, "new")] };
  const first = "Band adjuster seat: now 108 pound-force inches, it was 120 pound-force inches.";
  assert.deepEqual(torqueChanges(earlier, newer), [{ name: "Band adjuster seat", words: first }]);
  const told = ["step 2 now says “new” (was “old”)", "Band adjuster seat (band-seat): 120 -> 108 lbf·in"];
  assert.deepEqual(inWords(earlier, newer, told), [first, "Step 2 now says “new” (was “old”)"]);
  assert.equal(inWords(earlier, newer, null)[0], first);
  assert.deepEqual(inWords(earlier, earlier, null), ["The text changed."]);
});

test("without the manual's own words both texts are compared", () => {
  const earlier = { ...text("a", "b"), consumables: ["Rags"], cautions: [] };
  const newer = { ...text("a", "B", "c"), consumables: ["Pen"], cautions: [{ id: "h", word: "warning", harm: "Hot.", avoid: "Wait." }] };
  assert.deepEqual(otherChanges(earlier, newer), [
    "Step 2 now says: B",
    "Step 3 is new: c",
    "Consumable added: Pen.",
    "Consumable no longer listed: Rags.",
    "Caution added: WARNING Hot.",
  ]);
});

test("the manual's words are taken between the two revisions, and nothing beyond", () => {
  const told = [
    { revision: "c", words: ["third"] },
    { revision: "b", words: ["second", "third"] },
    { revision: "a", words: ["first"] },
  ];
  assert.deepEqual(wordsBetween(told, "a", "c"), ["third", "second"]);
  assert.deepEqual(wordsBetween(told, "b", "c"), ["third"]);
  assert.deepEqual(wordsBetween(told, "a", "b"), ["second", "third"]);
  assert.equal(wordsBetween(told, "unknown", "c"), null);
  assert.equal(wordsBetween(told, "a", "unknown"), null);
  assert.equal(wordsBetween(told, "c", "a"), "older");
});

/** A card of three steps, all done, whose text was then taken anew. */
async function renewedCard() {
  const { phone, job } = await startedPhone();
  const revision = PROCEDURE.revision;
  const turns = { reading: TURNS.id, when: "as found", written: "1 1/2", reason: "" };
  await phone.does("RB", "tick", { job, step: 1 }, { revision });
  await phone.does("RB", "reading", { job, step: 2, ...turns }, { revision });
  await phone.does("RB", "tick", { job, step: 2 }, { revision });
  const tick = await phone.does("RB", "tick", { job, step: 3 }, { revision });
  await phone.does("SL", "check", { job, step: 3, of: tick.id }, { revision });
  await phone.does("SL", "finding", { job, step: 3, what: "Worn", urgency: "to know" }, { revision });
  const [first, second, third] = PROCEDURE.steps;
  const newer = {
    ...PROCEDURE,
    revision: "newer",
    steps: [
      { ...first, html: "<p>Do 1 with care.</p>", text: "Do 1 with care." },
      { ...first, number: 2, html: "<p>Look.</p>", text: "Look." },
      { ...second, number: 3 },
      { ...third, number: 4 },
    ],
  };
  await phone.does("RB", "renew", { job, procedure: newer, words: ["step 2 is new"] }, { revision: "newer" });
  return { phone, job, newer };
}

test("steps whose text is the same keep everything, at their new places; the others are to be done anew", async () => {
  const { phone } = await renewedCard();
  const card = foldCard(phone.seen);
  assert.deepEqual(steps(card).map(({ shape, text: { number } }) => [number, shape]), [
    [1, "todo"], [2, "todo"], [3, "stored"], [4, "checked"],
  ]); // prettier-ignore
  assert.equal(steps(card)[2].readings[0].taken.written, "1 1/2");
  assert.deepEqual(openSteps(card).map(({ step: open }) => open.text.number), [1, 2]);
  assert.deepEqual(card.jobs[0].past.map((past) => [past.text.text, past.done.who]), [["Do 1.", "RB"]]);
  assert.deepEqual(card.jobs[0].renewals.map(({ from, to, words }) => [from, to, words]), [
    [PROCEDURE.revision, "newer", ["step 2 is new"]],
  ]);
  assert.equal(card.findings[0].step, 4, "the finding went with its step");
});

test("what a phone did by the earlier text meanwhile goes to the step that it meant", async () => {
  const { phone, job } = await renewedCard();
  const other = new Phone("phone-b");
  other.sees(phone.seen.filter(({ kind }) => kind !== "renew"));
  const { revision } = PROCEDURE;
  await other.does("KM", "hand-back", { job, step: 3, question: "Which mark?" }, { revision });
  await other.does("KM", "hand-back", { job, step: 1, question: "Which nut?" }, { revision });
  await other.does("KM", "finding", { job, step: 1, what: "Dirt", urgency: "to know" }, { revision });
  phone.sees(other.seen);
  const card = foldCard(phone.seen);
  assert.deepEqual(steps(card).map(({ question }) => question?.question ?? ""), ["", "", "", "Which mark?"]);
  assert.equal(card.jobs[0].past[0].question.question, "Which nut?");
  assert.equal(card.findings[1].step, 0, "its step is no longer in the text");
});

test("undoing the renewal brings the earlier text back, with what was on it", async () => {
  const { phone } = await renewedCard();
  await phone.does("RB", "undo", { of: phone.seen.at(-1).id });
  const card = foldCard(phone.seen);
  assert.deepEqual(steps(card).map(({ shape }) => shape), ["stored", "stored", "checked"]);
  assert.deepEqual([card.jobs[0].past, card.jobs[0].renewals], [[], []]);
});

test("a renewal to the revision that stands, or of another procedure, changes nothing", async () => {
  const { phone, job, newer } = await renewedCard();
  const before = foldCard(phone.seen);
  await phone.does("SL", "renew", { job, procedure: newer, words: [] });
  await phone.does("SL", "renew", { job, procedure: { ...newer, id: "other", revision: "x" }, words: [] });
  await phone.does("SL", "renew", { job: "none", procedure: { ...newer, revision: "y" }, words: [] });
  assert.deepEqual(foldCard(phone.seen), before);
});
