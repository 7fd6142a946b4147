/** Which version is whole and answers, and the daily look through all that is stored. */
import { heldKeys, keysOf } from "./held.js";
import { LIST, bundlesOf, isList, listed, proven, storedLists } from "./list.js";
import { keyOf, store, worker } from "./store.js";
import { VERSION } from "./version.js";

/** Whether the list, which is stored last, is there. The browser clears all of a site or nothing. */
export async function isWhole() {
  return (await (await store()).match(keyOf(LIST, VERSION))) !== undefined;
}

/**
 * From now on this version answers: what only earlier ones had is dropped. A newer one may be on its
 * way into the store; what it has there by now stays.
 */
export async function takeOver() {
  await worker.clients.claim();
  const own = new Set([...(await listed())].map(([path, sha]) => keyOf(path, sha)));
  const lists = await storedLists();
  const all = await store();
  const earlier = [...keysOf(lists.flatMap(bundlesOf)), ...[...(await heldKeys())].filter(isList)];
  for (const url of earlier) if (!own.has(url)) await all.delete(url);
}

/** Reads every stored file again; @returns how many were mended, and how many could not be. */
export async function checkAll() {
  const found = { mended: 0, missing: 0 };
  for (const [path, sha] of await listed()) {
    await proven(path, sha).then(({ isMended }) => (found.mended += Number(isMended)), () => found.missing++);
  }
  return found;
}
