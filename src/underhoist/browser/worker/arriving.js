/** What arrives over the line: proven, unpacked, a few requests at once. */
import { SCOPE, hash } from "./store.js";

/** Requests under way at once: a slow line answers late, and then all together. */
const AT_ONCE = 4;

/**
 * Fetches a file and proves it. A TypeError means that there is no connection.
 * @param {string} path
 * @param {string} sha
 * @returns {Promise<ArrayBuffer>}
 */
export async function fetched(path, sha) {
  for (const cache of /** @type {const} */ (["no-cache", "reload"])) {
    const arrived = await fetch(SCOPE + path, { cache });
    const bytes = await arrived.arrayBuffer();
    if (arrived.ok && (await hash(bytes)) === sha) return bytes;
  }
  throw new Error(`${path} did not arrive whole`);
}

/**
 * @param {ArrayBuffer} packed
 * @returns {Promise<ArrayBuffer>}
 */
export const unpack = (packed) => new Response(new Blob([packed]).stream().pipeThrough(new DecompressionStream("gzip"))).arrayBuffer();

/**
 * @param {unknown} error
 * @returns {null}
 */
export function unlessOffline(error) {
  if (error instanceof TypeError) throw error; // no connection: nothing else would arrive either
  return null;
}

/**
 * @template T
 * @param {T[]} items
 * @param {(item: T) => Promise<void>} act
 */
export async function inTurns(items, act) {
  const rest = items.values();
  const one = async () => {
    for (const item of rest) await act(item);
  };
  await Promise.all(Array.from({ length: AT_ONCE }, one));
}
