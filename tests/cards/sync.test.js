// Exchanges between phones and a server of the protocol: everything arrives once, whatever goes wrong.

import assert from "node:assert/strict";
import { test } from "node:test";

import { foldCard } from "../../site_overrides/assets/cards/record/fold.js";
import { exchange } from "../../site_overrides/assets/cards/sync/exchange.js";
import { PROCEDURE, VEHICLE, dice } from "./helpers.js";
import { SHOP, Server, SyncPhone, against, picture } from "./sync_model.js";

const CASES = 60;

const begin = async (phone, card = crypto.randomUUID()) => {
  await phone.does("start", { vehicle: VEHICLE, complaint: "Shifts up late", fault: "" }, { card });
  const job = (await phone.does("add", { procedure: PROCEDURE }, { card })).id;
  return { card, job };
};

const talk = (server, phone, more) => against(server, () => exchange(phone.around(SHOP, more)));

const ids = (phone) => [...phone.events.keys()].sort();

const FATES = ["lost on the way", "answer lost", "half an answer", "a page", 500, 503, 429, 401];

/** Anything happens, in any order; then the network is well and each phone exchanges twice. */
async function history(roll) {
  const server = new Server();
  const phones = [new SyncPhone(), new SyncPhone(), new SyncPhone()];
  const { card, job } = await begin(phones[0]);
  let broken = 0;
  server.fate = () => (roll() < 0.2 ? ((broken += 1), FATES[Math.floor(roll() * FATES.length)]) : "well");
  for (let turn = 0; turn < 40; turn += 1) {
    const phone = phones[Math.floor(roll() * phones.length)];
    const act = roll();
    if (act < 0.5) {
      const { value, content } = await picture(turn);
      const photo = roll() < 0.3;
      const step = 1 + Math.floor(roll() * 3);
      await phone.does(photo ? "photo" : "tick", photo ? value : { job, step }, { card, picture: photo ? content : undefined });
    } else {
      await talk(server, phone).catch(() => {});
    }
    if (act > 0.97) phone.notes.startOver();
  }
  server.fate = () => "well";
  for (const phone of [...phones, ...phones]) await talk(server, phone);
  return { server, phones, card, broken };
}

test(`in ${CASES} random histories with failures every phone ends with every entry and photo, once`, async () => {
  let broken = 0;
  let photos = 0;
  for (let seed = 1; seed <= CASES; seed += 1) {
    const { server, phones, ...rest } = await history(dice(seed));
    const made = phones.reduce((sum, { head }) => sum + head.sequence, 0);
    const [first, ...others] = phones;
    assert.equal(first.events.size, made, `seed ${seed}`);
    const events = [...server.docs.values()].filter(({ doc }) => !doc._id.includes(":"));
    assert.equal(events.length, made, `seed ${seed}: the server has each once`);
    for (const phone of others) {
      assert.deepEqual(ids(phone), ids(first), `seed ${seed}`);
      assert.deepEqual([...phone.photos.keys()].sort(), [...first.photos.keys()].sort(), `seed ${seed}`);
      assert.deepEqual(foldCard([...phone.events.values()]), foldCard([...first.events.values()]), `seed ${seed}`);
      assert.deepEqual([...phone.told], [], `seed ${seed}`);
    }
    broken += rest.broken;
    photos += first.photos.size;
  }
  assert.ok(broken > CASES && photos > CASES, "the histories break something and carry photos");
});

test("an exchange with nothing new asks little and writes nothing", async () => {
  const [server, phone] = [new Server(), new SyncPhone()];
  await begin(phone);
  await talk(server, phone);
  server.requests = [];
  await talk(server, phone);
  assert.deepEqual(server.requests.map((one) => one.replace(/underhoist-.*/, "underhoist")), [
    "GET /cards", "GET /cards/_local/underhoist", "GET /cards/_changes",
  ]); // prettier-ignore
});

test("a database made anew gets everything again, and one from an older copy too", async () => {
  const [server, phone] = [new Server(), new SyncPhone()];
  await begin(phone);
  await talk(server, phone);
  const older = { docs: new Map(server.docs), local: structuredClone(server.local), seq: server.seq };
  await begin(phone);
  await talk(server, phone);
  Object.assign(server, older);
  await talk(server, phone);
  assert.equal(server.docs.size, 4, "put back from an older copy");
  Object.assign(server, { docs: new Map(), local: new Map(), seq: 0 });
  await talk(server, phone);
  assert.equal(server.docs.size, 4, "made anew");
});

test("a phone whose record was cleared gets it back from the server", async () => {
  const [server, phone] = [new Server(), new SyncPhone()];
  await begin(phone);
  await talk(server, phone);
  const before = ids(phone);
  phone.events.clear();
  await talk(server, phone);
  assert.deepEqual(ids(phone), before);
});

test("entries that arrive name the cards that grew", async () => {
  const [server, one, other] = [new Server(), new SyncPhone(), new SyncPhone()];
  const { card } = await begin(one);
  await talk(server, one);
  await talk(server, other);
  assert.deepEqual([...new Set(other.arrived)], [card]);
});

test("an entry whose predecessor has not come is taken in; the predecessor may come later", async () => {
  const [server, one, other] = [new Server(), new SyncPhone(), new SyncPhone()];
  const { card, job } = await begin(one);
  const late = [...one.events.values()];
  await one.does("tick", { job, step: 1 }, { card });
  const [last] = [...one.events.values()].slice(-1);
  server.put({ _id: last.id, ...last });
  await talk(server, other);
  assert.deepEqual(ids(other), [last.id]);
  for (const event of late) server.put({ _id: event.id, ...event });
  await talk(server, other);
  assert.equal(other.events.size, 3);
  assert.deepEqual([...other.told], []);
});

test("what others delete on the server stays on the phone, and it is said", async () => {
  const [server, phone] = [new Server(), new SyncPhone()];
  await begin(phone);
  await talk(server, phone);
  const [id] = ids(phone);
  const { kind } = phone.events.get(id);
  server.put({ _id: id, _deleted: true }, { force: true });
  await talk(server, phone);
  assert.equal(phone.events.size, 2);
  assert.deepEqual([...phone.told], [[id, `An entry (${kind} by RB) was deleted on the server. It stays on this phone.`]]);
});

test("a batch that is too large is halved, and the one too large is told and not sent on and on", async () => {
  const [server, phone] = [new Server(), new SyncPhone()];
  const { card, job } = await begin(phone);
  for (const step of [1, 2, 3]) await phone.does("tick", { job, step }, { card });
  const great = (await phone.does("hand-back", { job, step: 1, question: "x".repeat(4000) }, { card })).id;
  const { answer } = server;
  server.answer = function (method, url, body) {
    const large = url.pathname.endsWith("_bulk_docs") && JSON.stringify(body).length > 4000;
    return large ? { status: 413, content: { error: "too_large" } } : answer.call(this, method, url, body);
  };
  await talk(server, phone);
  const add = [...phone.events.values()].find(({ kind }) => kind === "add").id;
  assert.deepEqual([...phone.events.keys()].filter((id) => !server.docs.has(id)), [great]);
  assert.ok(server.docs.has(add));
  assert.match(phone.told.get(great), /^An entry of this phone stays on it\. The server takes no entry of this size\./);
  server.requests = [];
  await talk(server, phone);
  assert.ok(!server.requests.includes("POST /cards/_bulk_docs"));
});

test("an exchange that is stopped ends before its next request", async () => {
  const [server, phone] = [new Server(), new SyncPhone()];
  await begin(phone);
  const stop = new AbortController();
  server.fate = () => (stop.abort(), "well");
  await assert.rejects(talk(server, phone, { signal: stop.signal }));
  assert.equal(server.requests.length, 1);
});
