// What comes onto a card with what was chosen, and where it stands there.

import assert from "node:assert/strict";
import { test } from "node:test";

import { choose, oftenWith, placesFor, timeInWords } from "../../site_overrides/assets/cards/plan/choose.js";
import { fetchList } from "../../site_overrides/assets/cards/plan/order.js";
import { foldCard } from "../../site_overrides/assets/cards/record/fold.js";
import { PROCEDURE, startedPhone } from "./helpers.js";

const entry = (id, rank, more = {}) => ({
  id, rank, title: id.toUpperCase(), family: ["any"], with: [], before: [], after: [], minutes: 5, ...more,
}); // prettier-ignore

const INDEX = {
  procedures: [
    entry("band", 3, { with: ["lift", "lower"], before: ["lift", "wrench"] }),
    entry("seal", 2, { with: ["lift", "lower"], after: ["road"] }),
    entry("lift", 1, { with: ["lower"] }),
    entry("lower", 8),
    entry("road", 9),
    entry("wrench", 0),
    entry("other", 4, { family: ["heron-4"] }),
  ],
};

const sets = (chosen, left = [], onCard = []) => ({
  chosen: new Set(chosen),
  left: new Set(left),
  onCard: new Set(onCard),
});
const ids = (list) => list.map(({ id }) => id);

test("each shared procedure comes once, in the order of the work, with who brings it", () => {
  const { list, along } = choose(INDEX, "kestrel-3", sets(["band", "seal"]));
  assert.deepEqual(ids(list), ["lift", "seal", "band", "lower"]);
  assert.deepEqual(along.get("lift"), ["BAND", "SEAL"]);
});

test("what is on the card already comes no second time", () => {
  const { list } = choose(INDEX, "kestrel-3", sets(["band"], [], ["lift"]));
  assert.deepEqual(ids(list), ["band", "lower"]);
});

test("what was left out is told with what it belongs to", () => {
  const { list, missed } = choose(INDEX, "kestrel-3", sets(["band"], ["lower"]));
  assert.deepEqual(ids(list), ["lift", "band"]);
  assert.deepEqual(missed, [{ title: "LOWER", by: ["BAND"] }]);
});

test("nothing of another family comes onto a card", () => {
  assert.deepEqual(ids(choose(INDEX, "kestrel-3", sets(["other"])).list), []);
});

test("neighbours by order alone are only named", () => {
  const { list } = choose(INDEX, "kestrel-3", sets(["band", "seal"]));
  assert.deepEqual(ids(oftenWith(INDEX, "kestrel-3", list)), ["road", "wrench"]);
});

test("a procedure added later stands where its work belongs", () => {
  const jobs = [
    { place: 1, text: { id: "lift" } },
    { place: 2, text: { id: "lower" } },
  ];
  const { list } = choose(INDEX, "kestrel-3", sets(["seal", "band", "road"], [], ["lift", "lower"]));
  const places = placesFor(jobs, list, INDEX);
  assert.deepEqual(places, [1.5, 1.75, 3]);
});

test("a card's jobs stand by their places, and an older card's as they were added", async () => {
  const { phone } = await startedPhone();
  await phone.does("RB", "add", { procedure: { ...PROCEDURE, id: "last" } });
  await phone.does("RB", "add", { procedure: { ...PROCEDURE, id: "between" }, place: 1.5 });
  assert.deepEqual(foldCard(phone.seen).jobs.map(({ text }) => text.id), ["set-band", "between", "last"]);
});

test("minutes in words", () => {
  const said = { 0: "0 min", 45: "45 min", 60: "1 h", 205: "3 h 25 min" };
  for (const [minutes, words] of Object.entries(said)) assert.equal(timeInWords(Number(minutes)), words);
});

test("the gravest caution stands first, each once, whichever procedure it comes from", () => {
  const text = (...words) => ({
    text: { tools: [], parts: [], consumables: [], fluids: [], cautions: words.map((word) => ({ id: word, word })) },
  });
  const { cautions } = fetchList([text("notice", "warning"), text("caution", "warning", "danger")]);
  assert.deepEqual(cautions.map(({ word }) => word), ["danger", "warning", "caution", "notice"]);
});
