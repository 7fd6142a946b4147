import assert from "node:assert/strict";
import { createHash } from "node:crypto";
import { test } from "node:test";

import { canonical, hashOf } from "../../site_overrides/assets/cards/record/canonical.js";
import { brokenLink } from "../../site_overrides/assets/cards/record/events.js";
import { startedPhone } from "./helpers.js";

test("the canonical text does not depend on the order of keys", () => {
  assert.equal(canonical({ b: [2, { d: 1, c: null }], a: "x" }), '{"a":"x","b":[2,{"c":null,"d":1}]}');
});

test("the hash is SHA-256, as Node's own crypto computes it", async () => {
  const other = createHash("sha256").update('{"a":"°"}').digest("hex");
  assert.equal(await hashOf({ a: "°" }), other);
});

test("a chain is whole, and a changed, lost or doubled link is found", async () => {
  const { phone, job } = await startedPhone();
  for (const step of [1, 2, 3]) await phone.does("RB", "tick", { job, step });
  const events = phone.seen;
  assert.equal(await brokenLink([...events].reverse()), null);
  const forged = events.map((event) => (event.sequence === 4 ? { ...event, who: "XX" } : event));
  assert.equal((await brokenLink(forged)).sequence, 4);
  assert.equal((await brokenLink(events.filter(({ sequence }) => sequence !== 3))).sequence, 4);
  assert.equal((await brokenLink([...events, events[2]])).sequence, 3);
});

test("every event carries what a record needs", async () => {
  const { phone } = await startedPhone();
  const [event] = phone.seen;
  assert.match(event.id, /^[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
  assert.match(event.at, /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z$/);
  assert.deepEqual(Object.keys(event).sort(), [
    "at", "card", "clock", "device", "hash", "id", "kind", "previous", "revision", "schema",
    "sequence", "value", "who",
  ]); // prettier-ignore
  assert.equal(event.schema, 1);
});
