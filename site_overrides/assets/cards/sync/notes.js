// What this phone remembers of the shop's server: how far it has read, and what is there.
//
// It has a database of its own, so that nothing here can touch the record. All of it can be made again:
// without it everything is exchanged once more, and what is there already stays as it is.

import { Connection } from "../record/connection.js";

/** @import { IDBPDatabase } from "../../vendor/idb.js" */
/** @import { News, Note, Notes } from "./exchange.js" */
/** @import { Refused } from "./incoming.js" */

// Stores of version 1:
//   self     the note, by the name "note"
//   known    documents that the server has, by id
//   offered  events whose picture the server has and this phone has not looked at, by id
//   told     what a person should know, by the id it is about
const STORES = ["known", "offered", "told"];

const shop = new Connection("underhoist-shop", 1, (database) => {
  database.createObjectStore("self", { keyPath: "name" });
  for (const name of STORES) database.createObjectStore(name, { keyPath: "id" });
});

/** @type {Notes} */
export const notes = {
  load: () => shop.with(async (database) => (await database.get("self", "note"))?.value ?? begin(database)),
  known: () => shop.with(async (database) => new Set(await database.getAllKeys("known"))),
  offered: () => shop.with((database) => database.getAllKeys("offered")),
  add: (news) => shop.with((database) => add(database, news)),
  count: (turn) => shop.with(async (database) => change(database, { turn })),
  startOver: () => shop.with(startOver),
};

/** What a person should know, in no order. @returns {Promise<Refused[]>} */
export function told() {
  return shop.with((database) => database.getAll("told"));
}

/**
 * A note of a new connection with a server; its name keeps two phones' checkpoints apart.
 *
 * @param {IDBPDatabase} database
 * @returns {Promise<Note>}
 */
async function begin(database) {
  const value = { session: crypto.randomUUID(), turn: 0, since: 0 };
  await database.put("self", { name: "note", value });
  return value;
}

/**
 * @param {IDBPDatabase} database
 * @param {Partial<Note>} news
 */
async function change(database, news) {
  const step = database.transaction("self", "readwrite");
  const value = (await step.store.get("note"))?.value;
  if (value) await step.store.put({ name: "note", value: { ...value, ...news } });
  await step.done;
}

/**
 * @param {IDBPDatabase} database
 * @param {News} news
 */
async function add(database, { since, known = [], offered = [], settled = [], told = [] }) {
  const step = database.transaction(["self", ...STORES], "readwrite");
  const [self, ...stores] = ["self", ...STORES].map((name) => step.objectStore(name));
  const [there, offers, said] = stores;
  const note = (await self.get("note"))?.value;
  if (since !== undefined && note) void self.put({ name: "note", value: { ...note, since } });
  for (const id of known) void there.put({ id });
  for (const id of known) void said.delete(id); // it was refused before, and is sound now
  for (const id of offered) void offers.put({ id });
  for (const id of settled) void offers.delete(id);
  for (const one of told) void said.put(one);
  await step.done;
}

/** @param {IDBPDatabase} database */
async function startOver(database) {
  const step = database.transaction(["self", ...STORES], "readwrite");
  for (const name of ["self", ...STORES]) void step.objectStore(name).clear();
  await step.done;
}
