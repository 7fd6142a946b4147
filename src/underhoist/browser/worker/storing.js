/** Storing a version: all of it before it is ready. What an earlier attempt or version left is kept. */
import { fetched, inTurns, unlessOffline, unpack } from "./arriving.js";
import { storeRuntimeOf } from "./coming.js";
import { heldKeys, heldOf } from "./held.js";
import { LIST, bundlesOf, storedLists } from "./list.js";
import { linesFetched, partsFetched } from "./parts.js";
import { hash, keep, keyOf, news } from "./store.js";
import { FILES, VERSION } from "./version.js";

/** @typedef {import("./list.js").Bundle} Bundle */
/** @typedef {import("./list.js").Listed} Listed */

/** Least time between two words on how far it is, in ms: a screen reader says each of them. */
const PAUSE = 400;

export async function storeAll() {
  const progress = { stored: 0, wanted: FILES, said: 0 };
  try {
    const older = await storedLists();
    const text = (await linesFetched(older)) ?? (await fetched(LIST, VERSION));
    const bundles = bundlesOf(text);
    let held = await heldOf(bundles, older);
    const isMissing = (/** @type {Listed} */ [path, , sha]) => !held.has(keyOf(path, sha));
    const isWanting = (/** @type {Bundle} */ { files }) => files.some(isMissing);
    progress.stored = FILES - bundles.flatMap(({ files }) => files.filter(isMissing)).length;
    const more = () => tell(progress);
    while (bundles.some(isWanting)) {
      await inTurns(bundles.filter(isWanting), async (bundle) => {
        if (!(await partsFetched(bundle, older, more))) await storeBundle(bundle, bundle.files.filter(isMissing), more);
      });
      held = await heldKeys(); // An older version that was taken meanwhile may have dropped some of it.
    }
    await storeRuntimeOf(bundles, older);
    await keep(LIST, VERSION, text);
  } catch (error) {
    news.postMessage({ ...progress, failed: error instanceof Error ? error.name : String(error) });
    throw error;
  }
}

/**
 * Takes the whole bundle where most of it is missing, and otherwise file by file.
 * @param {Bundle} bundle
 * @param {Listed[]} missing
 * @param {() => void} more
 */
async function storeBundle(bundle, missing, more) {
  if (2 * bytesOf(missing) > bytesOf(bundle.files) && (await unpackBundle(bundle, missing, more))) return;
  await inTurns(missing, async ([path, , sha]) => {
    await keep(path, sha, await fetched(path, sha));
    more();
  });
}

/**
 * @param {Bundle} bundle
 * @param {Listed[]} missing
 * @param {() => void} more
 * @returns {Promise<boolean>} false where it is not as the list has it
 */
async function unpackBundle({ url, sha, files }, missing, more) {
  const packed = await fetched(url, sha).catch(unlessOffline);
  if (!packed) return false;
  const whole = await unpack(packed);
  const wanted = new Set(missing.map(([path]) => path));
  let at = 0;
  const cut = files.map(([path, size, sha]) => ({ path, sha, bytes: whole.slice(at, (at += size)) }));
  await Promise.all(cut.map(async ({ path, sha, bytes }) => {
    if (!wanted.has(path)) return;
    if ((await hash(bytes)) !== sha) throw new Error(`${path} was packed damaged`);
    await keep(path, sha, bytes);
    more();
  }));
  return true;
}

/** @param {Listed[]} files */
const bytesOf = (files) => files.reduce((sum, [, size]) => sum + size, 0);

/**
 * Counts one more file as stored, and tells the pages now and then.
 * @param {{stored: number, wanted: number, said: number}} progress
 */
function tell(progress) {
  progress.stored++;
  if (Date.now() - progress.said < PAUSE && progress.stored < FILES) return;
  progress.said = Date.now();
  news.postMessage(progress);
}
