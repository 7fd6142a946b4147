import assert from "node:assert/strict";
import { test } from "node:test";

import { Session } from "../../site_overrides/assets/cards/record/session.js";
import { StorageTrouble, isWorthRetrying, troubleOf } from "../../site_overrides/assets/cards/record/trouble.js";
import { Phone, startedPhone } from "./helpers.js";

/** A disk that can be broken. */
class Disk {
  constructor(phone) {
    this.phone = phone;
    this.broken = false;
    this.asked = [];
  }

  append = async (draft, seen) => {
    this.asked.push(draft.id);
    if (this.broken) throw new StorageTrouble("full");
    const event = await this.phone.does(draft.who, draft.kind, draft.value, { seen });
    event.id = draft.id;
    return event;
  };

  eventsOf = async () => this.phone.seen;

  keep = async (events) => this.phone.sees(events);
}

test("a tick is shown as done only once it is stored", async () => {
  const { phone, job } = await startedPhone();
  const session = new Session("card-1", new Disk(phone), () => {});
  await session.load();
  const storing = session.record("key", { who: "RB", kind: "tick", value: { job, step: 1 } });
  assert.equal(session.state.jobs[0].steps[0].shape, "todo");
  assert.equal(session.waiting.size, 1);
  assert.equal(await storing, true);
  assert.equal(session.state.jobs[0].steps[0].shape, "stored");
  assert.equal(session.waiting.size, 0);
});

test("what could not be stored waits, says why, and is tried again with the same id", async () => {
  const { phone, job } = await startedPhone();
  const disk = new Disk(phone);
  const session = new Session("card-1", disk, () => {});
  await session.load();
  disk.broken = true;
  assert.equal(await session.record("key", { who: "RB", kind: "tick", value: { job, step: 1 } }), false);
  assert.equal(
    session.trouble,
    "The phone has no room left for records. Delete some photos or films, then try again.",
  );
  assert.equal(session.state.jobs[0].steps[0].shape, "todo");
  disk.broken = false;
  assert.equal(await session.retry(), true);
  assert.equal(session.trouble, "");
  assert.equal(disk.asked.length, 2);
  assert.equal(disk.asked[0], disk.asked[1]);
});

test("what the browser cleared under the page is put back from what the page holds", async () => {
  const { phone, job } = await startedPhone();
  const disk = new Disk(phone);
  const session = new Session("card-1", disk, () => {});
  await session.load();
  disk.phone = new Phone("phone-a-anew");
  assert.equal(await session.record("key", { who: "RB", kind: "tick", value: { job, step: 1 } }), true);
  assert.deepEqual(disk.phone.seen.map(({ kind }) => kind).sort(), ["add", "start", "tick"]);
  assert.equal(session.state.jobs[0].steps[0].shape, "stored");
});

test("a card that nobody stored has no state", async () => {
  const session = new Session("card-9", new Disk(new Phone("phone-a")), () => {});
  await session.load();
  assert.equal(session.state, null);
});

test("errors of the browser become troubles; only a fresh connection is worth a retry", () => {
  const codes = ["QuotaExceededError", "SecurityError", "VersionError", "InvalidStateError", "UnknownError"];
  const found = codes.map((name) => troubleOf(new DOMException("", name)));
  assert.deepEqual(found.map(({ code }) => code), ["full", "missing", "newer", "lost", "lost"]);
  assert.deepEqual(found.map(isWorthRetrying), [false, false, false, true, true]);
});
