// The CouchDB protocol and a phone's storage, as far as an exchange uses them, in memory.
//
// From the protocol's published API: documents by id with revisions, one entry a document in the feed of
// changes at its latest place, opaque sequences, conflicts for a document without its revision.

import { draft, seal } from "../../site_overrides/assets/cards/record/events.js";

const REV = "1-967a00dff5e02add41819138abb3284d";

/** Answers as a server of the protocol would; `fate` may break any request. */
export class Server {
  constructor() {
    this.docs = new Map(); // by id, in the order of the feed
    this.local = new Map();
    this.seq = 0;
    this.fate = () => "well";
    this.requests = [];
  }

  put(doc, { force = false } = {}) {
    if (this.docs.has(doc._id) && !force) return { id: doc._id, error: "conflict", reason: "Document update conflict" };
    this.docs.delete(doc._id);
    this.docs.set(doc._id, { doc: structuredClone(doc), seq: (this.seq += 1) });
    return { ok: true, id: doc._id, rev: REV };
  }

  /** What `fetch` does, for the page's own code. */
  fetch = async (address, { method = "GET", body, signal } = {}) => {
    signal?.throwIfAborted();
    const url = new URL(address);
    this.requests.push(`${method} ${url.pathname}`);
    const fate = this.fate(method, url);
    if (fate === "lost on the way") throw new TypeError("fetch failed");
    if (typeof fate === "number") return new Response("{}", { status: fate });
    if (fate === "a page") return new Response("<!doctype html><title>Sign in</title>", { status: 200 });
    const { status = 200, content } = this.answer(method, url, body === undefined ? undefined : JSON.parse(body));
    if (fate === "answer lost") throw new TypeError("fetch failed");
    const text = JSON.stringify(content);
    return new Response(fate === "half an answer" ? text.slice(0, text.length / 2) : text, { status });
  };

  answer(method, url, body) {
    const path = decodeURIComponent(url.pathname.replace(/^\/cards\/?/, ""));
    if (path === "") return { content: { db_name: "cards", update_seq: this.seq } };
    if (path === "_bulk_docs") return { status: 201, content: body.docs.map((doc) => this.put(doc)).reverse() };
    if (path === "_changes") return { content: this.changes(url.searchParams) };
    if (path.startsWith("_local/")) return this.checkpoint(method, path, body);
    const held = this.docs.get(path);
    return held && !held.doc._deleted ? { content: { _rev: REV, ...held.doc } } : { status: 404, content: { error: "not_found" } };
  }

  changes(asked) {
    const since = Number(String(asked.get("since")).split("-")[0]);
    const after = [...this.docs.values()].filter(({ seq }) => seq > since).slice(0, Number(asked.get("limit")));
    const whole = asked.get("include_docs") === "true";
    const results = after.map(({ seq, doc }) => ({
      seq: `${seq}-opaque`,
      id: doc._id,
      changes: [{ rev: REV }],
      ...(doc._deleted ? { deleted: true } : {}),
      ...(whole ? { doc: stubbed(doc) } : {}),
    }));
    return { results, last_seq: results.at(-1)?.seq ?? asked.get("since") };
  }

  checkpoint(method, path, body) {
    const held = this.local.get(path);
    if (method === "GET") return held ? { content: held } : { status: 404, content: { error: "not_found" } };
    if (held && held._rev !== body._rev) return { status: 409, content: { error: "conflict" } };
    this.local.set(path, { ...body, _rev: `0-${body.turn}` });
    return { status: 201, content: { ok: true } };
  }
}

/** @param {any} doc */
function stubbed(doc) {
  const names = Object.keys(doc._attachments ?? {});
  const stubs = names.map((name) => [name, { content_type: doc._attachments[name].content_type, stub: true }]);
  return { ...doc, _rev: REV, ...(names.length ? { _attachments: Object.fromEntries(stubs) } : {}) };
}

/** A phone: its record, its notes of the server, and a chain of its own. */
export class SyncPhone {
  constructor(device = crypto.randomUUID()) {
    this.device = device;
    this.events = new Map();
    this.photos = new Map();
    this.told = new Map();
    this.head = { device, sequence: 0, hash: "", clock: 0 };
    this.note = null;
    this.stuck = new Set();
    this.arrived = [];
    this.records = this.makeRecords();
    this.notes = this.makeNotes();
    this.notes.startOver();
  }

  async does(kind, value, { card, who = "RB", picture } = {}) {
    const clock = Math.max(0, ...[...this.events.values()].map((event) => event.clock));
    const event = await seal(draft({ card, who, kind, value }), { ...this.head, clock });
    this.head = { device: this.device, sequence: event.sequence, hash: event.hash, clock: event.clock };
    this.events.set(event.id, event);
    if (picture) this.photos.set(event.id, picture);
    return event;
  }

  around(shop, more = {}) {
    const { signal } = new AbortController();
    const progress = (cards) => this.arrived.push(...cards);
    return { shop, records: this.records, notes: this.notes, signal, stuck: this.stuck, progress, ...more };
  }

  makeRecords() {
    const places = () => new Map([...this.events.values()].map((event) => [`${event.device} ${event.sequence}`, event]));
    return {
      eventIds: async () => [...this.events.keys()],
      photoIds: async () => [...this.photos.keys()],
      events: async (ids) => ids.flatMap((id) => this.events.get(id) ?? []),
      at: async (wanted) => wanted.flatMap(([device, sequence]) => places().get(`${device} ${sequence}`) ?? []),
      picture: async (id) => this.photos.get(id) ?? null,
      takeIn: async (events, pictures) => this.takeIn(events, pictures, places()),
    };
  }

  takeIn(events, pictures, places) {
    const clash = events.find(({ id, hash }) => this.events.has(id) && this.events.get(id).hash !== hash);
    if (clash) return { events: 0, pictures: 0, clash: { event: clash, kind: "id" } };
    for (const event of events) {
      const there = places.get(`${event.device} ${event.sequence}`);
      if (there && there.id !== event.id) return { events: 0, pictures: 0, clash: { event, kind: "place" } };
      if (!this.events.has(event.id)) this.events.set(event.id, structuredClone(event));
      places.set(`${event.device} ${event.sequence}`, event);
    }
    for (const [id, picture] of pictures) this.photos.set(id, picture);
    return { events: events.length, pictures: pictures.size, clash: null };
  }

  makeNotes() {
    return {
      load: async () => ({ ...this.note }),
      known: async () => new Set(this.known),
      offered: async () => [...this.offered],
      count: async (turn) => void (this.note.turn = turn),
      startOver: async () => {
        this.note = { session: crypto.randomUUID(), turn: 0, since: 0 };
        this.known = new Set();
        this.offered = new Set();
        this.told.clear();
      },
      add: async ({ since, known = [], offered = [], settled = [], told = [] }) => {
        if (since !== undefined) this.note.since = since;
        for (const id of known) this.known.add(id);
        for (const id of known) this.told.delete(id);
        for (const id of offered) this.offered.add(id);
        for (const id of settled) this.offered.delete(id);
        for (const { id, wrong } of told) this.told.set(id, wrong);
      },
    };
  }
}

export const SHOP = { address: "https://server.example", database: "cards", user: "phones", password: "pass word" };

/** Lets the page's code meet this server instead of the network, until `done`. */
export async function against(server, done) {
  const { fetch } = globalThis;
  globalThis.fetch = server.fetch;
  try {
    return await done();
  } finally {
    globalThis.fetch = fetch;
  }
}

/** A JPEG's beginning and a frame header of 8 by 8 pixels. */
const BEGINNING = [0xff, 0xd8, 0xff, 0xc0, 0, 11, 8, 0, 8, 0, 8, 1, 1, 0x11, 0];

/** A picture that is one: its beginning, then anything. */
export async function picture(seed) {
  const bytes = Uint8Array.from([...BEGINNING, ...Array.from({ length: 60 }, (_none, at) => (seed * 31 + at * 7) % 256)]);
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  const sha256 = Array.from(digest, (byte) => byte.toString(16).padStart(2, "0")).join("");
  const value = { job: "", step: 0, finding: "", type: "image/jpeg", width: 8, height: 8, bytes: bytes.length, sha256 };
  return { value, content: { type: "image/jpeg", content: bytes.buffer } };
}
