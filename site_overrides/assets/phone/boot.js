/** Brings up Python with the calculators in it: from the build's memory image, or the slow way. */
import { hash, unpack } from "./download.js";
import { ROOT, RUNTIME_STORE, VERIFIED, inRuntimeStore, keptAt, readJson } from "./site.js";
import { unpackingFetch } from "./packed-program.js";
import { wholeImage } from "./sparse-image.js";

/** @typedef {import("./site.js").RuntimeManifest} RuntimeManifest */
/** @typedef {typeof import("../../runtime/pyodide.mjs")} PyodideModule */
/** @typedef {Awaited<ReturnType<PyodideModule["loadPyodide"]>>} Pyodide */
/** @typedef {Parameters<PyodideModule["loadPyodide"]>[0]} Options */

/**
 * Restores the memory image, in which the calculators are imported already.
 * @returns {Promise<Pyodide>}
 */
export async function restored() {
  const manifest = await readManifest();
  const stored = readImage(manifest.image);
  const proof = stored.then((bytes) => prove(manifest, manifest.image, bytes));
  const [python] = await Promise.all([load(manifest, { _loadSnapshot: stored.then(wholeImage) }), proof]);
  return python;
}

/**
 * Starts Python from nothing, with the calculators' wheels unpacked.
 * @returns {Promise<Pyodide>}
 */
export async function startedAnew() {
  const manifest = await readManifest();
  await Promise.all(manifest.wheels.map((url) => prove(manifest, url).catch(() => {}))); // then it is fetched again
  const wheels = readWheels(manifest.wheels);
  wheels.catch(() => {}); // Reported where it is awaited.
  const pyodide = await load(manifest, {});
  for (const wheel of await wheels) pyodide.unpackArchive(wheel, "wheel");
  return pyodide;
}

/**
 * What the drafting page unpacks besides, in either case.
 * @returns {Promise<ArrayBuffer[]>}
 */
export async function draftingWheels() {
  return readWheels((await readManifest()).drafting);
}

/** @returns {Promise<RuntimeManifest>} */
const readManifest = () => readJson("runtime/manifest.json");

/** @param {string[]} urls */
const readWheels = (urls) => Promise.all(urls.map(async (url) => (await read(url)).arrayBuffer()));

/**
 * @param {RuntimeManifest} manifest
 * @param {Options} more
 * @returns {Promise<Pyodide>}
 */
async function load(manifest, more) {
  const core = new URL(manifest.core, ROOT).href;
  globalThis.fetch = unpackingFetch(manifest.files);
  /** @type {PyodideModule} */
  const { loadPyodide } = await import(`${core}pyodide.mjs`);
  const starting = loadPyodide({ indexURL: core, lockFileContents: JSON.stringify(manifest.lock), ...more });
  // Beside the start, so that it costs no time; a damaged interpreter may never say that it failed.
  const proofs = manifest.files.filter(({ url }) => url.startsWith(manifest.core)).map(({ url }) => prove(manifest, url));
  const [python] = await Promise.all([starting, ...proofs]);
  return python;
}

/** @param {string} url */
async function read(url) {
  const response = await fetch(new URL(url, ROOT));
  if (!response.ok) throw new Error(`${url} did not arrive (${response.status})`);
  return response;
}

/**
 * Reads the image: the store holds it unpacked, a host sends it packed.
 * @param {string} url
 */
async function readImage(url) {
  // Past the service worker, which would only hand the stored one on.
  const response = (await inRuntimeStore(new URL(url, ROOT).href)) ?? (await read(url));
  return response.headers.has(VERIFIED) ? response.arrayBuffer() : unpack(response);
}

/**
 * One wrong bit could change an answer: a stored file that is damaged is dropped, and then fetched again.
 * @param {RuntimeManifest} manifest
 * @param {string} url
 * @param {ArrayBuffer} [read] its content where it was read already
 */
async function prove({ files }, url, read) {
  const file = files.find((each) => each.url === url);
  if (!file) return;
  const bytes = read ?? (await (await inRuntimeStore(keptAt(file)))?.arrayBuffer());
  // Not stored yet: where it cannot be had either, the interpreter would wait for it without a word.
  if (!bytes) await fetch(new URL(url, ROOT), { method: "HEAD" });
  if (!bytes || (await hash(bytes)) === (file.stored_sha256 ?? file.sha256)) return;
  await (await globalThis.caches?.open(RUNTIME_STORE))?.delete(keptAt(file));
  throw new Error(`${url} is damaged`);
}
