// What comes out of a card: the last look, the fluid in words, the parts and what the owner is told.

import assert from "node:assert/strict";
import { test } from "node:test";

import { fluidSentences } from "../../site_overrides/assets/cards/out/fluid-words.js";
import { lastLook } from "../../site_overrides/assets/cards/out/last-look.js";
import { ownerTold, whatBecame } from "../../site_overrides/assets/cards/out/owner.js";
import { fluidPutIn, partsList } from "../../site_overrides/assets/cards/out/parts.js";
import { cardWith, litres } from "./filled.js";
import { TURNS } from "./helpers.js";

const NONE = new Set();
const FILTER = {
  id: "filter",
  name: "Filter",
  variants: [
    { name: "Flat filter", tell: "No neck", measures: ["height: 20 to 22 mm"] },
    { name: "Deep filter", tell: "A neck", measures: ["height: 40 to 42 mm"] },
  ],
};
const SEAL = { id: "seal", name: "Seal", variants: [] };

test("a card in order has nothing to look at", async () => {
  const { tick, card } = await cardWith([{}]);
  await tick(1);
  assert.deepEqual(lastLook(card(), NONE), []);
});

test("what is still off is told with the step that took it off and the one to put it back", async () => {
  const { tick, leave, card } = await cardWith([{ takes_off: ["pan"] }, { takes_off: ["magnet"] }, { puts_back: ["pan"] }]);
  await tick(1);
  await tick(2);
  await leave(3, "The owner takes it away on a trailer");
  const [off, left, ...more] = lastLook(card(), NONE);
  assert.equal(off.title, "Still off");
  assert.deepEqual(off.lines.map(({ words }) => words), ["Pan.", "Magnet. No step on this card puts it back on."]);
  assert.deepEqual(off.lines[0].ways, [
    { href: "#card/card-1/4", words: "Taken off: Take the pan off, step 1: Do 1." },
    { href: "#card/card-1/6", words: "To put it back on: Take the pan off, step 3: Do 3." },
  ]);
  assert.deepEqual(left, {
    title: "Steps left out",
    lines: [
      {
        words: "Not needed, by RB: The owner takes it away on a trailer",
        ways: [{ href: "#card/card-1/6", words: "Take the pan off, step 3: Do 3." }],
      },
    ],
  });
  assert.deepEqual(more, []);
});

test("readings outside their limits are told with their reason", async () => {
  const { read, card } = await cardWith([{ readings: [TURNS, { ...TURNS, id: "b", name: "Wear" }] }]);
  await read(1, TURNS.id, "3", "The lining is worn");
  await read(1, "b", "", "Rusted over");
  const [{ lines }] = lastLook(card(), NONE);
  assert.deepEqual(lines.map(({ words }) => words), [
    "Turns until the adjuster seats, as found: 3 turns. Outside 1 1/4 to 2 turns. Reason: The lining is worn",
    "Wear, as found: not readable. Reason: Rusted over",
  ]);
});

test("parts with look-alikes want telling apart once their procedure is begun", async () => {
  const { phone, tick, card } = await cardWith([{}], { parts: [FILTER, SEAL] });
  assert.deepEqual(lastLook(card(), NONE), []);
  await tick(1);
  assert.deepEqual(lastLook(card(), NONE), [
    {
      title: "Look-alike parts not identified",
      lines: [{ words: "Filter", ways: [{ href: "#card/card-1/fetch", words: "Identify it" }] }],
    },
  ]);
  await phone.does("RB", "identify", { part: "filter", variant: "Flat filter", how: "height: 20 to 22 mm; No neck" });
  assert.deepEqual(lastLook(card(), NONE), []);
});

test("findings that wait for a decision are told", async () => {
  const { find, card } = await cardWith([{}]);
  await find("The hose is cracked", "this visit", "done");
  await find("The joint has play", "next service");
  const [{ title, lines }, ...more] = lastLook(card(), NONE);
  assert.deepEqual([title, lines.map(({ words }) => words), more], ["Findings without a decision", ["The joint has play"], []]);
});

test("photos are told whose pictures are on another phone", async () => {
  const { phone, job, card } = await cardWith([{}]);
  const shot = { type: "image/jpeg", sha256: "", width: 4, height: 3, bytes: 9 };
  const one = await phone.does("RB", "photo", { job, step: 1, finding: "", ...shot });
  const two = await phone.does("RB", "photo", { job, step: 1, finding: "", ...shot });
  assert.deepEqual(lastLook(card(), new Set([one.id, two.id])), []);
  const said = (...ids) => lastLook(card(), new Set(ids))[0].lines[0].words;
  assert.equal(said(one.id), "The picture of 1 photo is not on this phone. It is on the one that took it.");
  assert.equal(said(), "The pictures of 2 photos are not on this phone. They are on those that took them.");
});

async function fluid(out, into, marks) {
  const filled = await cardWith([{ readings: [litres("out", "out"), litres("in", "in")] }]);
  if (out) await filled.read(1, "out", out);
  if (into) await filled.read(1, "in", into);
  if (marks) await filled.marks(marks);
  return fluidSentences(filled.card());
}

test("fluid in against fluid out, in words", async () => {
  assert.deepEqual(await fluid("", ""), []);
  assert.deepEqual(await fluid("4", "4"), ["4 litres came out, 4 litres put in.", "As much was put in as came out."]);
  assert.deepEqual(await fluid("3.8", "4"), ["3.8 litres came out, 4 litres put in.", "0.2 litres more was put in than came out."]);
  assert.deepEqual(await fluid("1", ""), ["1 litre came out, 0 litres put in.", "1 litre less was put in than came out."]);
});

test("a difference is pointed out only beyond the dipstick's marks, and only in their unit", async () => {
  const beyond = "That is more than lies between the dipstick’s marks, 0.5 litres.";
  assert.equal((await fluid("3", "3.6", "0.5 L")).at(-1), beyond);
  assert.equal((await fluid("3.6", "3", "0.5 L")).at(-1), beyond);
  assert.equal((await fluid("3", "3.5", "0.5 L")).length, 2);
  assert.equal((await fluid("3", "3.6", "1 pt US")).length, 2);
  assert.equal((await fluid("3", "3.6")).length, 2);
});

test("fluid in different units is listed and not added up", async () => {
  const pints = { ...litres("pints", "in"), unit: "pt US", unit_words: "US pints" };
  const { read, card } = await cardWith([{ readings: [litres("out", "out"), pints] }]);
  await read(1, "out", "1");
  await read(1, "pints", "2");
  assert.deepEqual(fluidSentences(card()), [
    "Came out: 1 litre.", "Put in: 2 US pints.", "These are in different units, so they are not added up.",
  ]); // prettier-ignore
});

test("the parts list says which look-alike it is, how much went in and who has what", async () => {
  const text = { parts: [FILTER, SEAL], consumables: ["Rags"], fluids: ["Dunmere D2"] };
  const { phone, read, find, card } = await cardWith([{ readings: [litres("in", "in"), litres("more", "in")] }], text);
  assert.equal(partsList(card()).parts[0].about, "Not identified: it has look-alikes.");
  await phone.does("RB", "identify", { part: "filter", variant: "Flat filter", how: "height: 20 to 22 mm; No neck" });
  await phone.does("SL", "fetch", { thing: "part|seal" });
  await read(1, "in", "3.2");
  await read(1, "more", "0.4");
  await find("The joint has play", "next service", "advised", "Kit of two");
  await find("The hose is cracked", "this visit", "done");
  const { parts, consumables, fluids, advised } = partsList(card());
  assert.deepEqual(parts.map(({ name, about }) => [name, about]), [
    ["Filter", "Flat filter (height: 20 to 22 mm; No neck)"], ["Seal", ""],
  ]); // prettier-ignore
  assert.deepEqual(parts.map(({ fetched }) => fetched?.who), [undefined, "SL"]);
  assert.deepEqual(consumables.map(({ thing, name }) => [thing, name]), [["consumable|Rags", "Rags"]]);
  assert.deepEqual(fluids.map(({ name, about }) => [name, about]), [["Dunmere D2", "3.6 litres put in"]]);
  assert.deepEqual(advised.map(({ what }) => what), ["The joint has play"]);
});

test("fluid is not put down to a kind that the card does not tell", async () => {
  const { read, card } = await cardWith([{ readings: [litres("in", "in")] }], { fluids: ["Dunmere D2", "Dunmere D3"] });
  await read(1, "in", "2");
  assert.deepEqual([...fluidPutIn(card())], [["", ["2 litres"]]]);
  const { fluids } = partsList(card());
  assert.deepEqual(fluids.map(({ name, about }) => [name, about]), [
    ["Dunmere D2", ""], ["Dunmere D3", ""], ["Fluid of which the card does not say the kind", "2 litres put in"],
  ]); // prettier-ignore
});

test("the owner hears what was put right, and what is left in the order of its weight", async () => {
  const { tick, find, card } = await cardWith([{}]);
  await tick(1);
  await find("The pan has a dent", "to know");
  await find("Metal on the magnet", "next service", "declined", "A note for the shop");
  await find("The joint has play", "before driving", "advised");
  await find("The hose was cracked", "this visit", "done");
  const told = ownerTold(card());
  const said = (list) => list.map((finding) => `${finding.what}. ${whatBecame(finding)}`);
  assert.deepEqual(said(told.right), ["The hose was cracked. Put right on this visit."]);
  assert.deepEqual(said(told.open), [
    "The joint has play. Before it is driven. We advise you to have it done. It is not done yet.",
    "Metal on the magnet. At the next service. You decided against it for now.",
    "The pan has a dent. Only to know.",
  ]);
  assert.deepEqual(told.stop.map(({ what }) => what), ["The joint has play"]);
  assert.deepEqual([told.work, told.people], [["Take the pan off"], { worked: ["RB"], checked: [] }]);
});

test("what must be done before driving keeps nobody from driving once it is done", async () => {
  const { find, card } = await cardWith([{}]);
  await find("The joint had play", "before driving", "done");
  assert.deepEqual(ownerTold(card()).stop, []);
});

test("before and after are told where both are numbers", async () => {
  const both = { ...TURNS, id: "both", when: "both", name: "Free play" };
  const { read, card } = await cardWith([{ readings: [both, { ...both, id: "half" }] }]);
  await read(1, "both", "1 3/4");
  await read(1, "both", "1 1/2", "", "as left");
  await read(1, "half", "1 3/4");
  assert.deepEqual(ownerTold(card()).measured, [{ name: "Free play", before: "1 3/4 turns", after: "1 1/2 turns" }]);
});

test("a card that is closed with something off keeps the reason", async () => {
  const { phone, card } = await cardWith([{}]);
  await phone.does("SL", "close", { reason: "The pan is at the welder’s", off: ["pan"] });
  assert.deepEqual([card().closed.who, card().closed.reason], ["SL", "The pan is at the welder’s"]);
});

test("a card that was closed before reasons were kept has none", async () => {
  const { phone, card } = await cardWith([{}]);
  await phone.does("SL", "close", {});
  assert.equal(card().closed.reason, "");
});
