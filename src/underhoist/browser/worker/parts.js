/** An update: of the list the lines that changed, of a large file the parts. */
import { inTurns, unlessOffline, unpack } from "./arriving.js";
import { bundlesOf } from "./list.js";
import { SCOPE, hash, keep, stored } from "./store.js";
import { VERSION } from "./version.js";

/** @typedef {import("./list.js").Bundle} Bundle */

const LINES = "offline/lines.json"; // the hash of each line of the list

/**
 * @param {ArrayBuffer[]} older lists
 * @returns {Promise<ArrayBuffer | null>} this version's list; null where it has to be fetched whole
 */
export async function linesFetched(older) {
  if (!older.length) return null;
  const known = await byHash(older.flatMap(linesOf));
  /** @type {string[] | null} */
  const wanted = await fetch(SCOPE + LINES, { cache: "no-cache" }).then((answer) => (answer.ok ? answer.json() : null)).catch(unlessOffline);
  return wanted && joined(wanted, known, VERSION);
}

/** @param {ArrayBuffer} text */
function linesOf(text) {
  const bytes = new Uint8Array(text);
  const lines = [];
  for (let at = 0, end = 0; at < bytes.length; at = end) {
    end = bytes.indexOf(10, at) + 1 || bytes.length;
    lines.push(text.slice(at, end));
  }
  return lines;
}

/**
 * Stores a large file, put together from an older one's parts and those that changed.
 * @param {Bundle} bundle
 * @param {ArrayBuffer[]} older lists
 * @param {() => void} more
 * @returns {Promise<boolean>} false where it has to be fetched whole
 */
export async function partsFetched({ files: [file], parts }, older, more) {
  if (!file || !parts) return false;
  const [path, , sha] = file;
  const known = await byHash((await Promise.all(older.map((list) => olderParts(list, path)))).flat());
  const whole = await joined(parts.map(([, hashed]) => hashed), known, sha);
  if (!whole) return false;
  await keep(path, sha, whole);
  more();
  return true;
}

/**
 * @param {ArrayBuffer} list
 * @param {string} path
 */
async function olderParts(list, path) {
  const bundle = bundlesOf(list).find(({ files: [file] }) => file?.[0] === path);
  const bytes = bundle?.parts && (await stored(path, bundle.files[0]?.[2] ?? ""));
  let at = 0;
  return bytes ? (bundle?.parts ?? []).map(([size]) => bytes.slice(at, (at += size))) : [];
}

/** @param {ArrayBuffer[]} parts */
const byHash = async (parts) => new Map(await Promise.all(parts.map(async (part) => /** @type {const} */ ([await hash(part), part]))));

/**
 * @param {string[]} wanted hashes of all parts, in order
 * @param {Map<string, ArrayBuffer>} known
 * @param {string} sha of the whole
 * @returns {Promise<ArrayBuffer | null>} null where most of it would have to be fetched, or it is not what it should be
 */
async function joined(wanted, known, sha) {
  const missing = [...new Set(wanted)].filter((each) => !known.has(each));
  if (2 * missing.length > wanted.length) return null;
  try {
    await inTurns(missing, async (each) => void known.set(each, await fetchedPart(each)));
  } catch (error) {
    return unlessOffline(error);
  }
  const whole = await new Blob(wanted.map((each) => known.get(each) ?? new ArrayBuffer(0))).arrayBuffer();
  return (await hash(whole)) === sha ? whole : null;
}

/** @param {string} sha of the part, unpacked */
async function fetchedPart(sha) {
  const arrived = await fetch(`${SCOPE}offline/parts/${sha.slice(0, 12)}.bin`, { cache: "no-cache" });
  const bytes = arrived.ok ? await arrived.arrayBuffer() : null;
  if (!bytes) throw new Error("a part did not arrive");
  return unpack(bytes).catch(() => bytes); // Damaged: the whole, then, is not what it should be.
}
