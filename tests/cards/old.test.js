// Records as earlier versions stored them: tests/cards/old/database-1.json was made by their own code.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";

import { brokenLink } from "../../site_overrides/assets/cards/record/events.js";
import { foldCard } from "../../site_overrides/assets/cards/record/fold.js";
import { FORMAT, asToday, isReadable } from "../../site_overrides/assets/cards/record/formats.js";
import { leftInWords } from "../../site_overrides/assets/cards/record/left.js";
import { PROCEDURE, startedPhone } from "./helpers.js";

const stored = JSON.parse(readFileSync(new URL("old/database-1.json", import.meta.url), "utf8"));
const texts = stored.events.filter(({ kind }) => kind === "add").map(({ value }) => value.procedure);

test("a card of the first version stands as it stood then", async () => {
  const card = foldCard(stored.events);
  assert.equal(leftInWords(card), "Left: 18 of 22 steps, 1 question.");
  assert.deepEqual(card.jobs.map(({ text }) => text.title), texts.map(({ title }) => title));
  const readings = card.jobs.flatMap((job) => job.steps.flatMap((step) => step.readings));
  const taken = readings.find((reading) => reading.taken);
  assert.deepEqual([taken.asked.fluid, taken.taken.mark.who], ["", "RB"]);
  assert.equal(card.unknown, 0);
  assert.equal(await brokenLink(stored.events), null);
});

test("a text of format 1 gets what it did not know as empty, and keeps all the rest", () => {
  assert.deepEqual(texts.map(({ format }) => format), [1, 1]);
  for (const text of texts) {
    const today = asToday(text);
    assert.equal(today.format, FORMAT);
    assert.deepEqual([today.date, today.author, today.calculators], ["", "", []]);
    for (const [at, step] of today.steps.entries()) {
      assert.deepEqual([step.takes_off, step.puts_back], [[], []]);
      assert.equal(step.html, text.steps[at].html);
      assert.ok(step.readings.every(({ fluid }) => fluid === ""));
    }
    assert.deepEqual(today.parts, text.parts.map((part) => ({ variants: [], ...part })));
  }
});

test("a text of format 2 from before it had a date is whole", () => {
  const { date, author, ...kept } = { ...asToday(PROCEDURE), date: "", author: "" };
  assert.deepEqual(asToday(kept), { ...kept, date, author });
});

test("a procedure of a newer format is kept and counted, not shown", async () => {
  assert.equal(isReadable({ format: FORMAT + 1 }), false);
  const { phone, job } = await startedPhone();
  await phone.does("RB", "add", { procedure: { ...PROCEDURE, format: FORMAT + 1, steps: [{ novel: true }] } });
  const renewed = { ...PROCEDURE, format: FORMAT + 1, revision: "r", steps: [null] };
  await phone.does("RB", "renew", { job, procedure: renewed, words: [] });
  const card = foldCard(phone.seen);
  assert.deepEqual([card.unknown, card.jobs.length, card.jobs[0].text.revision], [2, 1, PROCEDURE.revision]);
});
