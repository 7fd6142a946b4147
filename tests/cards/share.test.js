// The card's file: the same bytes for the same card, and nothing let in that is not what it says.

import assert from "node:assert/strict";
import { createHash } from "node:crypto";
import { test } from "node:test";

import { canonical, hashOf } from "../../site_overrides/assets/cards/record/canonical.js";
import { foldCard } from "../../site_overrides/assets/cards/record/fold.js";
import { readCard, writeCard } from "../../site_overrides/assets/cards/share/card-file.js";
import { gaps, without } from "../../site_overrides/assets/cards/share/chain.js";
import { toText } from "../../site_overrides/assets/cards/share/pictures.js";
import { sizeOf } from "../../site_overrides/assets/cards/share/picture-size.js";
import { FIRST, JPEG, SECOND, jpegOf, sharedCard, withPhoto } from "./shared.js";

const refusal = (written) =>
  readCard(typeof written === "string" ? written : JSON.stringify(written)).then(
    () => "taken",
    ({ name, message }) => `${name}: ${message}`,
  );

/** The file as data, changed, with the hashes made anew where that is asked for. */
async function changed(change, { sealed = false } = {}) {
  const { file } = await sharedCard();
  const held = JSON.parse(writeCard(file));
  change(held);
  if (!sealed) return held;
  let previous = "";
  for (const event of held.events) {
    const { hash: _hash, ...body } = { ...event, previous };
    Object.assign(event, { previous, hash: await hashOf(body) });
    previous = event.hash;
  }
  return held;
}

test("a card comes back from its file as it was, and its file has the same bytes again", async () => {
  const { file } = await sharedCard();
  const written = writeCard(file);
  const read = await readCard(written);
  assert.deepEqual(foldCard(read.events), foldCard(file.events));
  assert.equal(writeCard(read), written);
  assert.equal(writeCard({ ...file, events: [...file.events].reverse() }), written);
  assert.equal(written, `${canonical(JSON.parse(written))}\n`);
});

test("a picture goes with the card, byte by byte", async () => {
  const { file, photo } = await withPhoto();
  const read = await readCard(writeCard(file));
  assert.deepEqual(new Uint8Array(read.pictures.get(photo.id).content), JPEG);
  assert.equal(read.pictures.get(photo.id).type, "image/jpeg");
});

test("base64 agrees with Node's own, whatever the length", () => {
  for (const length of [0, 1, 2, 3, 0x6000 - 1, 0x6000, 0x6000 + 1, 100_000]) {
    const bytes = Uint8Array.from({ length }, (_none, at) => (at * 7 + 3) % 256);
    assert.equal(toText(bytes.buffer), Buffer.from(bytes).toString("base64"), String(length));
  }
});

test("events of a kind from a newer version are kept", async () => {
  const { phone, file } = await sharedCard();
  await phone.does("RB", "weigh", { job: "x", heavy: { deep: [1] } }, { card: file.card });
  const read = await readCard(writeCard({ ...file, events: phone.seen }));
  assert.equal(read.events.at(-1).kind, "weigh");
  assert.equal(foldCard(read.events).unknown, 1);
});

const WHOLE = {
  "an empty file": ["", "Refusal: The file is empty."],
  "a file that was cut off": ['{"format":"underhoist-card","ver', "Refusal: The file is no JSON, or it was cut off on its way. Send it once more."],
  "a file of another program": ['{"jobs":[],"type":"workorder"}', "Refusal: This is not a card of this manual: nothing in it says underhoist-card. Another program made it."],
  "a list": ["[1,2]", "Refusal: This is not a card of this manual: nothing in it says underhoist-card. Another program made it."],
  "a newer version": [
    '{"format":"underhoist-card","version":2}',
    "Refusal: A newer version of the manual made this file. Reload this page while there is a signal, then try again.",
  ],
  "no version": ['{"format":"underhoist-card"}', "Refusal: The file, version: nothing is no version of a card file."],
  "nothing else": ['{"format":"underhoist-card","version":1}', "Refusal: The file, card: nothing stands where a text is wanted."],
  "very deep JSON": [`${"[".repeat(200_000)}${"]".repeat(200_000)}`, /^Refusal: (The file is no JSON|This is not a card)/],
}; // prettier-ignore

for (const [what, [written, words]] of Object.entries(WHOLE)) {
  test(`refused: ${what}`, async () => {
    const said = await refusal(written);
    if (words instanceof RegExp) assert.match(said, words);
    else assert.equal(said, words);
  });
}

const nest = (deep) => (deep === 0 ? "x" : { in: nest(deep - 1) });

/** What is done to a whole file, whether the hashes are made to fit again, and what is said. */
const HOSTILE = {
  "a changed text": [(file) => (file.events[0].value.complaint = "None"), false, "Entry 1 (start by RB): It was changed after it was made: its hash does not fit. Ask for the file again."],
  "a changed person": [(file) => (file.events[2].who = "XX"), false, "Entry 3 (tick by XX): It was changed after it was made: its hash does not fit. Ask for the file again."],
  "an event left out of the middle and joined up": [
    (file) => { file.events.splice(2, 1); file.events[2].sequence = 3; }, false,
    "Entry 3 (reading by RB): It was changed after it was made: its hash does not fit. Ask for the file again.",
  ],
  "an id that is no UUID": [(file) => (file.events[1].id = "1"), true, "Entry 2, id: “1” stands where a UUID is wanted."],
  "a card id with markup": [(file) => (file.card = "<img src=x onerror=alert(1)>"), true, /It belongs to another card than the file says\./],
  "a device that is no UUID": [(file) => (file.events[1].device = 7), true, "Entry 2, device: 7 stands where a UUID is wanted."],
  "a day that is none": [(file) => (file.events[1].at = "2026-02-30T25:00:00.000Z"), true, "Entry 2, at: “2026-02-30T25:00:00.000Z” is no date."],
  "a day in words": [(file) => (file.events[1].at = "yesterday"), true, "Entry 2, at: “yesterday” stands where a date and time is wanted."],
  "a place below 1": [(file) => (file.events[1].sequence = 0), false, "Entry 2, sequence: 0 stands where a whole number from 1 on is wanted."],
  "a clock beyond counting": [(file) => (file.events[1].clock = 1e300), false, "Entry 2, clock: 1e+300 stands where a whole number from 1 on is wanted."],
  "a value that is a list": [(file) => (file.events[2].value = []), true, "Entry 3, value: a list stands where a group of values is wanted."],
  "a reading without its number": [(file) => delete file.events[3].value.written, true, "Entry 4 (reading): It does not hold what an event of this kind needs."],
  "a step that would break the sum": [(file) => (file.events[2].value.step = { valueOf: 1 }), true, "Entry 3 (tick), value, step: a group of values stands where a number is wanted."],
  "something added to an event": [(file) => (file.events[2].nice = 1), true, "Entry 3 (tick): “nice” is no part of an event."],
  "the same id twice": [(file) => file.events.push(structuredClone(file.events[2])), false, "Entry 5 (tick by RB): Its id stands in the file twice."],
  "an event of another card": [(file) => (file.events[2].card = file.events[2].id), true, "Entry 3 (tick by RB): It belongs to another card than the file says."],
  "no events": [(file) => (file.events = []), false, "The file: There is no entry in it."],
  "a depth beyond any card": [(file) => (file.events[2].value.more = nest(40)), true, "The file: It is nested deeper than any card is."],
  "a text beyond any card": [(file) => (file.events[2].value.more = "x".repeat(100_001)), true, "The file: A text in it is longer than 100000 characters."],
  "a step with a script's address": [
    (file) => (file.events[1].value.procedure.calculators = [{ id: "c", name: "C", url: "javascript:alert(1)" }]), true,
    "Entry 2 (add), procedure, calculators, number 1, url: “javascript:alert(1)” leads out of the manual.",
  ],
  "an address hidden behind a line break": [(file) => (file.events[1].value.procedure.url = "java\nscript:alert(1)"), true, /leads out of the manual/],
  "an address elsewhere": [(file) => (file.events[1].value.procedure.url = "//elsewhere.example/"), true, /leads out of the manual/],
  "steps that are no list": [(file) => (file.events[1].value.procedure.steps = { length: 1e9 }), true, "Entry 2 (add): It does not hold what an event of this kind needs."],
  "a step that is nothing": [(file) => (file.events[1].value.procedure.steps[0] = null), true, "Entry 2 (add), procedure, steps, number 1: null stands where a group of values is wanted."],
  "a signal word of one's own": [
    (file) => (file.events[1].value.procedure.cautions = [{ id: "a", word: "fine", harm: "h", avoid: "a" }]), true,
    "Entry 2 (add), procedure, cautions, number 1, word: “fine” is none of “danger”, “warning”, “caution”, “notice”.",
  ],
  "a format that is no number": [
    (file) => (file.events[1].value.procedure.format = { toString: 1 }), true,
    "Entry 2 (add), procedure, format: a group of values stands where a whole number from 1 on is wanted.",
  ],
  "more lists than a procedure has": [(file) => (file.events[1].value.procedure.family = Array.from({ length: 501 }, () => "x")), true, /The list is longer than 500\./],
  "a picture nobody took": [(file) => (file.pictures = [{ event: file.events[0].id, content: "AAAA" }]), false, "Picture 1: No photo of the card asks for it, or it is there twice."],
}; // prettier-ignore

for (const [what, [change, sealed, words]] of Object.entries(HOSTILE)) {
  test(`refused: ${what}`, async () => {
    const said = await refusal(await changed(change, { sealed }));
    if (words instanceof RegExp) assert.match(said, words);
    else assert.equal(said, `Refusal: ${words}`);
  });
}

for (const key of ["__proto__", "constructor", "prototype"]) {
  test(`refused: the key ${key}`, async () => {
    const { file } = await sharedCard();
    const written = writeCard(file).replace('"value":{', `"value":{"${key}":{"polluted":true},`);
    assert.equal(await refusal(written), `Refusal: The file: It has a key that no card has: “${key}”.`);
    assert.equal({}.polluted, undefined);
  });
}

const PICTURES = {
  "a picture that was changed": [
    (photo) => (photo.content = Buffer.from([...JPEG.slice(0, -1), 1]).toString("base64")),
    "Picture 1: It is not the picture that was taken: its size or its hash does not fit. Ask for the file again.",
  ],
  "a picture that is no base64": [(photo) => (photo.content = "***"), "Picture 1: Its text is no base64."],
  "a page that says it is a picture": [
    (photo) => (photo.content = Buffer.from("<html onload=alert(1)>").toString("base64")),
    "Picture 1: It is no picture of type “image/jpeg”.",
  ],
}; // prettier-ignore

for (const [what, [change, words]] of Object.entries(PICTURES)) {
  test(`refused: ${what}`, async () => {
    const { file } = await withPhoto();
    const held = JSON.parse(writeCard(file));
    change(held.pictures[0]);
    assert.equal(await refusal(held), `Refusal: ${words}`);
  });
}

test("refused: a drawing with a script, whatever its hash", async () => {
  const drawing = new TextEncoder().encode("<svg xmlns='http://www.w3.org/2000/svg' onload='alert(1)'/>");
  const { file } = await withPhoto("image/svg+xml", drawing);
  assert.equal(
    await refusal(writeCard(file)),
    "Refusal: Picture 1: A picture of type “image/svg+xml” is not taken in: JPEG, PNG and WebP are.",
  );
});

test("a gap in a phone's chain is what another card took, or a loss", async () => {
  const { phone, file } = await sharedCard();
  await phone.does("RB", "start", phone.seen[0].value, { card: SECOND });
  await phone.does("RB", "close", {}, { card: file.card });
  const own = phone.seen.filter(({ card }) => card === file.card);
  const gap = { device: FIRST, from: 5, to: 5 };
  assert.deepEqual(gaps(own), [gap]);
  assert.deepEqual(without(gaps(own), [{ device: FIRST, from: 4, to: 9 }]), []);
  assert.deepEqual(without([{ ...gap, to: 9 }], [{ device: FIRST, from: 6, to: 7 }]), [gap, { ...gap, from: 8, to: 9 }]);
  assert.deepEqual(without([gap], [{ device: SECOND, from: 1, to: 9 }]), [gap]);
  const read = await readCard(writeCard({ ...file, events: own, elsewhere: [gap] }));
  assert.deepEqual(without(gaps(read.events), read.elsewhere), []);
});

test("the hash of a picture is what Node's own crypto makes of it", async () => {
  const { photo } = await withPhoto();
  assert.equal(photo.value.sha256, createHash("sha256").update(JPEG).digest("hex"));
});

test("what fault finding wrote comes back, and what it never writes is refused with its place", async () => {
  const { phone, file } = await sharedCard();
  const does = (kind, value) => phone.does("RB", kind, value, { card: file.card });
  await does("complaint", { fault: "late-shifts", complaint: "It hangs on" });
  await does("result", { fault: "late-shifts", check: "hose", result: "bad", name: "The hose", minutes: 5 });
  const answer = { calculator: "shift-check", pattern: "late-light", rivals: [] };
  await does("calculation", { ...answer, name: "Shift check", summary: "Late.", from: "/c" });
  const named = { fault: "late-shifts", cause: "hose", name: "The hose", likely: "about 93 in 100" };
  await does("finding", { job: "", what: "The hose", urgency: "this visit", ...named });
  const read = await readCard(writeCard({ ...file, events: phone.seen }));
  assert.deepEqual(foldCard(read.events), foldCard(phone.seen));
  const wrong = [
    ["calculation", { ...answer, rivals: [3], name: "n", summary: "s", from: "f" }, /\(calculation\), value, rivals, number 1/],
    ["result", { fault: "late-shifts", check: "hose", result: "bad", minutes: "5" }, /\(result\), value, minutes/],
    ["result", { fault: "late-shifts", check: 3, result: "bad" }, /does not hold what an event of this kind needs/],
    ["finding", { job: "", what: "w", urgency: "to know", likely: {} }, /\(finding\), value, likely/],
  ];
  for (const [kind, value, words] of wrong) {
    const { sequence, hash } = phone;
    await does(kind, value);
    assert.match(await refusal(writeCard({ ...file, events: phone.seen })), words);
    phone.seen.pop();
    Object.assign(phone, { sequence, hash });
  }
});

/** The bytes of a text in which \0 to \xff stand for themselves. */
const bytesOf = (text) => Uint8Array.from(text, (letter) => letter.charCodeAt(0));
const PNG = "\x89PNG\r\n\x1a\n\0\0\0\x0dIHDR";
const WEBP = "RIFF\0\0\0\0WEBP";

test("how large a picture is stands in its own header", () => {
  const sizes = [
    ["image/png", `${PNG}\0\0\x01\x02\0\0\x03\x04`, { width: 258, height: 772 }],
    ["image/webp", `${WEBP}VP8X\x0a\0\0\0\0\0\0\0\x0f\x27\0\x03\0\x01`, { width: 10_000, height: 65_540 }],
    ["image/webp", `${WEBP}VP8L\0\0\0\0/\xff\xff\xff\x0f`, { width: 16_384, height: 16_384 }],
    ["image/webp", `${WEBP}VP8 \0\0\0\0\0\0\0\x9d\x01\x2a\x40\x06\xb0\x04`, { width: 1600, height: 1200 }],
    ["image/png", PNG, null],
    ["image/webp", `${WEBP}XXXX${"\0".repeat(40)}`, null],
    ["image/jpeg", "\xff\xd8\xff\xd9", null],
  ];
  for (const [type, text, size] of sizes) assert.deepEqual(sizeOf(bytesOf(text), type), size, text);
  assert.deepEqual(sizeOf(jpegOf(4032, 3024), "image/jpeg"), { width: 4032, height: 3024 });
});

test("a picture that would unpack to more than a phone holds is refused", async () => {
  const { file } = await withPhoto("image/jpeg", jpegOf(30_000, 30_000));
  const wrong = "Picture 1: It has 900 million pixels. A card’s photo has 16 million at most.";
  await assert.rejects(readCard(writeCard(file)), { message: wrong });
  const none = await withPhoto("image/jpeg", Uint8Array.from([0xff, 0xd8, 0xff, 0xd9]));
  await assert.rejects(readCard(writeCard(none.file)), /Its beginning does not say how large/);
});
