/** What is in the store already when a version is to be stored, and what of it counts. */
import { inTurns } from "./arriving.js";
import { bundlesOf, isList } from "./list.js";
import { SCOPE, keyOf, store, stored } from "./store.js";

/** @typedef {import("./list.js").Bundle} Bundle */

/** Addresses of all that is stored, each with its hash. */
export const heldKeys = async () => new Set((await (await store()).keys()).map(({ url }) => url));

/**
 * Addresses of what need not be fetched. What belongs to no whole version is of an attempt that was
 * broken off: a browser that was killed may have written half of it, so it is proven or dropped.
 * @param {Bundle[]} bundles of the version that is to be stored
 * @param {ArrayBuffer[]} lists of all versions that are whole
 * @returns {Promise<Set<string>>}
 */
export async function heldOf(bundles, lists) {
  const held = await heldKeys();
  const whole = keysOf(lists.flatMap(bundlesOf));
  const wanted = keysOf(bundles);
  const isKnown = [...held].filter(isList).length === lists.length; // else one is damaged, and what it names must stay
  const left = [...held].filter((url) => !whole.has(url) && !isList(url));
  const all = await store();
  await inTurns(left, async (url) => {
    const [path = "", sha = ""] = url.slice(SCOPE.length).split("?sha=");
    if (wanted.has(url) ? await stored(path, sha) : !isKnown) return;
    await all.delete(url);
    held.delete(url);
  });
  return held;
}

/**
 * @param {Bundle[]} bundles
 * @returns {Set<string>}
 */
export const keysOf = (bundles) => new Set(bundles.flatMap(({ files }) => files.map(([path, , sha]) => keyOf(path, sha))));
