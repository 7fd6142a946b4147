// What a server may hold was written by anybody: each entry is let in by itself, or refused and told.

import assert from "node:assert/strict";
import { test } from "node:test";

import { hashOf } from "../../site_overrides/assets/cards/record/canonical.js";
import { exchange } from "../../site_overrides/assets/cards/sync/exchange.js";
import { PROCEDURE, VEHICLE } from "./helpers.js";
import { SHOP, Server, SyncPhone, against, picture } from "./sync_model.js";

const talk = (server, phone) => against(server, () => exchange(phone.around(SHOP)));

async function sealed(event, change) {
  const { hash: _hash, ...body } = { ...structuredClone(event), ...change };
  return { ...body, hash: await hashOf(body) };
}

/** A server with a sound card from another phone, a phone that has not exchanged yet, and their events. */
async function meeting() {
  const [server, other, phone] = [new Server(), new SyncPhone(), new SyncPhone()];
  const card = crypto.randomUUID();
  const start = await other.does("start", { vehicle: VEHICLE, complaint: "Late", fault: "" }, { card });
  const add = await other.does("add", { procedure: PROCEDURE }, { card });
  const tick = await other.does("tick", { job: add.id, step: 1 }, { card });
  return { server, other, phone, card, events: [start, add, tick] };
}

const doc = (event) => ({ _id: event.id, ...event });

/** A thing that stands in the feed instead of the tick, and what is said of it. */
const HOSTILE = {
  "no event at all": [(tick) => ({ _id: tick.id, hello: 1 }), /“|nothing/],
  "a list for its value": [async (tick) => doc(await sealed(tick, { value: [] })), /a list stands where a group of values is wanted/],
  "content that its hash does not fit": [(tick) => doc({ ...tick, who: "XX" }), /^An entry from the server \(tick by XX\): It was changed after it was made: its hash does not fit\.$/],
  "an id that is not its own": [(tick) => ({ ...tick, _id: crypto.randomUUID() }), /It stands under an id that is not its own\.$/],
  "a key that reaches a program's own parts": [(tick) => JSON.parse(JSON.stringify(doc(tick)).replace('"step":1', '"step":1,"__proto__":{"a":1}')), /It has a key that no card has: “__proto__”/],
  "deep nesting": [(tick) => ({ ...doc(tick), value: JSON.parse(`${"[".repeat(40)}1${"]".repeat(40)}`) }), /nested deeper than any card is/],
  "an address that leads out": [async (tick) => doc(await sealed(tick, { kind: "add", value: { procedure: { ...PROCEDURE, url: "javascript:alert(1)" } } })), /leads out of the manual/],
  "a place that does not follow": [async (tick) => doc(await sealed(tick, { previous: "0".repeat(64) })), /It does not follow from the entry before it\.$/],
  "a text that is endless": [async (tick) => doc(await sealed(tick, { value: { job: "x".repeat(200_000) } })), /A text in it is longer than 100000 characters/],
};

for (const [name, [make, said]] of Object.entries(HOSTILE)) {
  test(`an entry with ${name} is refused and told, and the others arrive`, async () => {
    const { server, phone, events } = await meeting();
    const [start, add, tick] = events;
    const bad = await make(tick);
    for (const one of [doc(start), bad, doc(add)]) server.put(one);
    await talk(server, phone);
    assert.deepEqual([...phone.events.keys()].sort(), [start.id, add.id].sort());
    assert.deepEqual([...phone.told.keys()], [bad._id]);
    assert.match(phone.told.get(bad._id), said);
    assert.equal({}.a, undefined);
  });
}

test("an entry of this phone that comes back with other contents is refused; this phone keeps its own", async () => {
  const { server, other, events } = await meeting();
  await talk(server, other);
  const [, , tick] = events;
  server.put(doc(await sealed(tick, { who: "XX" })), { force: true });
  await talk(server, other);
  assert.equal(other.events.get(tick.id).who, "RB");
  assert.match(other.told.get(tick.id), /Another entry stands at its place of its phone’s chain/);
  server.put(doc(await sealed(tick, { who: "XX", sequence: 9 })), { force: true });
  await talk(server, other);
  assert.match(other.told.get(tick.id), /it is on this phone with other contents\. This phone keeps its own\.$/);
  assert.equal(other.events.get(tick.id).who, "RB");
});

test("of two entries at one place the first stays, in one batch and in two", async () => {
  const { server, phone, events } = await meeting();
  const [start, add, tick] = events;
  const twin = await sealed(tick, { id: crypto.randomUUID(), who: "XX" });
  for (const one of [start, add, tick, twin]) server.put(doc(one));
  await talk(server, phone);
  assert.equal(phone.events.size, 3);
  assert.deepEqual([...phone.told.keys()], [twin.id]);
  const third = await sealed(tick, { id: crypto.randomUUID(), who: "YY" });
  server.put(doc(third));
  await talk(server, phone);
  assert.equal(phone.events.size, 3);
  assert.match(phone.told.get(third.id), /Another entry stands at its place/);
});

test("a refused entry that is put right arrives, and is not told any more", async () => {
  const { server, phone, events } = await meeting();
  const [start] = events;
  server.put(doc({ ...start, who: "XX" }));
  await talk(server, phone);
  assert.equal(phone.told.size, 1);
  server.put(doc(start), { force: true });
  await talk(server, phone);
  assert.deepEqual([[...phone.told], phone.events.size], [[], 1]);
});

test("design documents and entries of newer kinds do no harm: the one is left, the other kept", async () => {
  const { server, phone, events } = await meeting();
  const newer = await sealed(events[2], { kind: "torque-angle", value: { angle: 90 } });
  for (const one of [{ _id: "_design/any", views: {} }, doc(events[0]), doc(events[1]), doc(newer)]) server.put(one);
  await talk(server, phone);
  assert.equal(phone.events.size, 3);
  assert.deepEqual([...phone.told], []);
});

const attach = (id, data) => ({ _id: `photo:${id}`, _attachments: { picture: { content_type: "image/jpeg", data } } });

test("a photo that is not the one that was taken is refused, and another try does not ask for it", async () => {
  const { server, other, phone, card } = await meeting();
  const { value, content } = await picture(1);
  const photo = await other.does("photo", value, { card, picture: content });
  await talk(server, other);
  server.put(attach(photo.id, btoa("<script>alert(1)</script>")), { force: true });
  await talk(server, phone);
  assert.equal(phone.photos.size, 0);
  assert.match(phone.told.get(`photo:${photo.id}`), /^A photo from the server \(by RB\): It is no picture of type “image\/jpeg”\.$/);
  server.requests = [];
  await talk(server, phone);
  assert.ok(!server.requests.some((one) => one.includes("photo")));
});

test("a photo whose entry has not come waits for it", async () => {
  const { server, other, phone, card } = await meeting();
  const { value, content } = await picture(2);
  const photo = await other.does("photo", value, { card, picture: content });
  await talk(server, other);
  const { doc: held } = server.docs.get(photo.id);
  server.docs.delete(photo.id);
  await talk(server, phone);
  assert.equal(phone.photos.size, 0);
  server.put(held);
  await talk(server, phone);
  assert.deepEqual([...phone.photos.keys()], [photo.id]);
});

test("a document larger than anything of a card is stepped over, and what stands behind it arrives", async () => {
  const { server, phone, events } = await meeting();
  server.put({ _id: "huge", text: "x".repeat(17_000_000) });
  for (const event of events) server.put(doc(event));
  await talk(server, phone);
  assert.equal(phone.events.size, 3);
  assert.deepEqual([...phone.told], [["huge", "An entry on the server is larger than any entry of a card. It was left out."]]);
});

for (const [name, answer] of Object.entries({
  "a page of a Wi-Fi": ["<!DOCTYPE html><p>Sign in", /^Something else answered in the server’s place/],
  "an answer of something else": ['{"status":"up"}', /does not speak the CouchDB protocol/],
  "an answer that breaks off": ['{"db_name":"ca', /cut off on its way/],
  "a plain null": ["null", /does not speak the CouchDB protocol/],
})) {
  test(`${name} is told for what it is`, async () => {
    const phone = new SyncPhone();
    const server = { fetch: async () => new Response(answer[0]) };
    await assert.rejects(talk(server, phone), ({ message }) => answer[1].test(message));
  });
}
