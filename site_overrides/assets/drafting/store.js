// Drafts on this device: each change on disk before anyone is told, earlier texts kept.

import { Connection } from "../cards/record/connection.js";
import { copyDraft, level } from "./second-copy.js";

/** @import { IDBPDatabase } from "../vendor/idb.js" */
/** @import { Draft, Version } from "./types.js" */

export const DATABASE = "underhoist-drafts";

/** Raise it with every change of the stores, and add to `upgrade` what leads there. */
export const VERSION = 1;

/** Earlier texts that are kept of each draft. */
export const KEPT = 60;

/** Time in ms after which the text before a change is worth keeping by itself. */
const APART = 60_000;

const STRICT = /** @type {const} */ ({ durability: "strict" });

const drafts = new Connection(DATABASE, VERSION, upgrade, level);

/**
 * @param {IDBPDatabase} database
 * @param {number} from 0 where there was none
 */
function upgrade(database, from) {
  if (from < 1) {
    database.createObjectStore("drafts", { keyPath: "id" });
    const versions = database.createObjectStore("versions", { keyPath: "id" });
    versions.createIndex("draft", ["draft", "at"]);
    database.createObjectStore("device", { keyPath: "name" });
  }
}

/** @returns {Promise<Draft[]>} the one that was changed last stands first */
export async function allDrafts() {
  const found = /** @type {Draft[]} */ (await drafts.with((database) => database.getAll("drafts")));
  return found.sort((one, other) => (one.changed < other.changed ? 1 : -1));
}

/**
 * @param {string} id
 * @returns {Promise<Draft | undefined>}
 */
export const draftOf = (id) => drafts.with((database) => database.get("drafts", id));

/**
 * @param {{file: string, text: string, basis: string | null}} what
 * @returns {Promise<Draft>}
 */
export async function begin(what) {
  const now = new Date().toISOString();
  /** @type {Draft} */
  const draft = { id: crypto.randomUUID(), ...what, begun: now, changed: now, count: 1, change: "", removed: "" };
  await drafts.with(async (database) => {
    const change = database.transaction("drafts", "readwrite", STRICT);
    await Promise.all([change.store.put(draft), change.done]);
  });
  await copyDraft(draft);
  return draft;
}

/**
 * One change of a draft. `count` is that of the draft as the page knows it: where another window
 * has stored since, nothing is overwritten, and this text is kept among the earlier ones.
 * @typedef {object} Change
 * @property {string} id
 * @property {string} change
 * @property {number} count
 * @property {Partial<Pick<Draft, "text" | "file" | "basis" | "removed">>} to
 * @property {string} [why] keeps the text before the change, named by this
 */

/**
 * Stores a change. Resolves when it is on disk.
 *
 * @param {Change} change
 * @returns {Promise<{draft: Draft, isMine: boolean}>} the draft as it is now on disk
 * @throws {import("../cards/record/trouble.js").StorageTrouble}
 */
export async function store(change) {
  const result = await drafts.with(async (database) => {
    const work = database.transaction(["drafts", "versions"], "readwrite", STRICT);
    const stored = await storeIn(work, change);
    await work.done;
    return stored;
  });
  await copyDraft(result.draft);
  return result;
}

/**
 * @param {import("../vendor/idb.js").IDBPTransaction<unknown, string[], "readwrite">} work
 * @param {Change} asked
 */
async function storeIn(work, { id, change, count, to, why }) {
  const kept = work.objectStore("drafts");
  /** @type {Draft | undefined} */
  const before = await kept.get(id);
  if (!before) throw new DOMException("The draft is not there.", "UnknownError");
  if (before.change === change) return { draft: before, isMine: true };
  const at = new Date().toISOString();
  const versions = work.objectStore("versions");
  if (before.count !== count) {
    if (to.text !== undefined && to.text !== before.text) await versions.put({ id: change, draft: id, at, why: "written in another window", text: to.text });
    return { draft: before, isMine: false };
  }
  const draft = { ...before, ...to, changed: at, count: count + 1, change };
  await kept.put(draft);
  if (to.text !== undefined && to.text !== before.text) await keepEarlier(versions, before, at, why);
  return { draft, isMine: true };
}

/**
 * Keeps the text before a change: where the change has a name, or the last one kept is old.
 *
 * @param {import("../vendor/idb.js").IDBPObjectStore<unknown, string[], "versions", "readwrite">} versions
 * @param {Draft} before
 * @param {string} at
 * @param {string} [why]
 */
async function keepEarlier(versions, before, at, why) {
  const own = IDBKeyRange.bound([before.id, ""], [before.id, "\uffff"]);
  const index = versions.index("draft");
  const last = await index.openCursor(own, "prev");
  const isApart = !last || Date.parse(at) - Date.parse(last.value.at) > APART;
  if (!why && !isApart) return;
  if (last?.value.text !== before.text) {
    await versions.put({ id: crypto.randomUUID(), draft: before.id, at: before.changed, why: why ?? "", text: before.text });
  }
  const keys = await index.getAllKeys(own);
  await Promise.all(keys.slice(0, -KEPT).map((key) => versions.delete(key)));
}

/**
 * @param {string} draft its id
 * @returns {Promise<Version[]>} the newest first
 */
export async function versionsOf(draft) {
  const own = IDBKeyRange.bound([draft, ""], [draft, "\uffff"]);
  const found = await drafts.with((database) => database.getAllFromIndex("versions", "draft", own));
  return found.reverse();
}

/**
 * @param {string} name
 * @returns {Promise<unknown>}
 */
export async function remembered(name) {
  return (await drafts.with((database) => database.get("device", name)))?.value;
}

/**
 * @param {string} name
 * @param {unknown} value
 */
export function remember(name, value) {
  return drafts.with(async (database) => {
    const change = database.transaction("device", "readwrite", STRICT);
    await Promise.all([change.store.put({ name, value }), change.done]);
  });
}
