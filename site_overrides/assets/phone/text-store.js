/** The first stage: whether every page and asset is in the service worker's store. */
import { ROOT, readJson } from "./site.js";
import { noteStored } from "./since.js";

/** @typedef {import("./site.js").TextList} TextList */
/** @typedef {{stored: number, wanted: number, version: string, size: number}} TextState */

/**
 * Compares the list that came with the pages with what the store really holds.
 * @returns {Promise<TextState>}
 */
export async function textState() {
  /** @type {TextList} */
  const list = await readJson("offline/files.json");
  const missing = await missingOf(list);
  const wanted = list.urls.length;
  if (missing.length === 0) noteStored("text", list.version);
  return { stored: wanted - missing.length, wanted, version: list.version, size: list.size };
}

/**
 * Fetches what is missing: the service worker checks and stores it on its way through.
 * @returns {Promise<number>} how many were missing
 */
export async function repairText() {
  const missing = await missingOf(await readJson("offline/files.json"));
  for (const url of missing) await fetch(new URL(url, ROOT), { cache: "reload" });
  return missing.length;
}

/** @returns {Promise<Cache | null>} where the service worker keeps the pages */
async function pageStore() {
  const names = await caches.keys();
  const name = names.find((each) => each.includes("-precache-") && each.endsWith(ROOT));
  return name ? caches.open(name) : null;
}

/**
 * @param {TextList} list
 * @returns {Promise<string[]>}
 */
async function missingOf(list) {
  const requests = (await (await pageStore())?.keys()) ?? [];
  const held = new Set(requests.map((request) => new URL(request.url).pathname));
  return list.urls.filter((url) => !held.has(new URL(url, ROOT).pathname));
}

/**
 * Every runtime list that the store holds: the one in use, and that of a version that waits.
 * @returns {Promise<import("./site.js").RuntimeManifest[]>}
 */
export async function storedManifests() {
  const store = await pageStore();
  if (!store) return [];
  const path = new URL("runtime/manifest.json", ROOT).pathname;
  const requests = (await store.keys()).filter(({ url }) => new URL(url).pathname === path);
  const found = await Promise.all(requests.map((request) => store.match(request)));
  return Promise.all(found.filter((response) => response !== undefined).map((each) => each.json()));
}
