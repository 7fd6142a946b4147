/** Brings up Python with the calculators in it: from the build's memory image, or the slow way. */
import { unpack } from "./download.js";
import { interpreterFetch } from "./interpreter-fetch.js";
import { Proofs } from "./proofs.js";
import { prove, proveCopied, proveMemory } from "./prove.js";
import { dropCopy, readCopy } from "./quick-copy.js";
import { ROOT, VERIFIED, inRuntimeStore, isScript, readJson } from "./site.js";
import { wholeImage } from "./sparse-image.js";

/** @typedef {import("./site.js").RuntimeManifest} RuntimeManifest */
/** @typedef {import("./site.js").StoredFile} StoredFile */
/** @typedef {typeof import("../../runtime/pyodide.mjs")} PyodideModule */
/** @typedef {Awaited<ReturnType<PyodideModule["loadPyodide"]>>} Pyodide */
/** @typedef {Parameters<PyodideModule["loadPyodide"]>[0]} Options */
/** @typedef {Map<string, ArrayBuffer>} Copy what files hold, by their addresses */

/**
 * Restores the memory image, in which the calculators are imported already.
 * @returns {Promise<Pyodide>}
 */
export async function restored() {
  const manifest = await readManifest();
  void interpreter(manifest).catch(() => {}); // It comes through the service worker, and takes its time.
  return (await restoredFromCopy(manifest)) ?? restoredFromStore(manifest);
}

/**
 * @param {RuntimeManifest} manifest
 * @returns {Promise<Pyodide | null>} null where there is no copy or it is damaged: then it is dropped
 */
async function restoredFromCopy(manifest) {
  const image = new Uint8Array(manifest.memory.size);
  const copy = await readCopy(manifest, image);
  if (!copy) return null;
  try {
    return await restoredIn(manifest, image, { filled: Promise.resolve(), proof: proveMemory(manifest, image), copy });
  } catch {
    await dropCopy().catch(() => {});
    return null;
  }
}

/** @param {RuntimeManifest} manifest */
function restoredFromStore(manifest) {
  const image = new Uint8Array(manifest.memory.size);
  const read = readImage(manifest.image);
  const filled = read.then((bytes) => wholeImage(bytes, image));
  return restoredIn(manifest, image, { filled, proof: read.then((bytes) => prove(manifest, manifest.image, bytes)) });
}

/**
 * Sets the interpreter up while its memory is read. Were that still empty when it is wanted, it would be refused.
 * @param {RuntimeManifest} manifest
 * @param {Uint8Array<ArrayBuffer>} image
 * @param {{filled: Promise<unknown>, proof: Promise<void>, copy?: Copy}} memory
 * @returns {Promise<Pyodide>}
 */
async function restoredIn(manifest, image, { filled, proof, copy }) {
  const loaded = load(manifest, { _loadSnapshot: image }, { copy, ready: filled });
  await Promise.allSettled([filled, proof, loaded]); // Who begins anew after a failure is alone then.
  await Promise.all([filled, proof]);
  return loaded;
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
 * @param {{copy?: Copy, ready?: Promise<unknown>}} [given] what is read already, and what it must not begin without
 * @returns {Promise<Pyodide>}
 */
async function load(manifest, more, { copy = new Map(), ready = Promise.resolve() } = {}) {
  const proofs = new Proofs();
  const core = manifest.files.filter(({ url }) => url.startsWith(manifest.core));
  for (const { url } of core.filter(({ url }) => isScript(url))) proofs.add(prove(manifest, url));
  const proveRead = (/** @type {StoredFile} */ { url }, /** @type {Promise<ArrayBuffer>} */ content) =>
    proofs.add(content.then((bytes) => (copy.has(url) ? proveCopied(manifest, url, bytes) : prove(manifest, url, bytes))));
  globalThis.fetch = interpreterFetch(core.filter(({ url }) => !isScript(url)), { copy, ready, read: proveRead });
  return proofs.hold(begun(manifest, more));
}

/**
 * @param {RuntimeManifest} manifest
 * @param {Options} more
 */
async function begun(manifest, more) {
  const { loadPyodide } = await interpreter(manifest);
  const lockFileContents = JSON.stringify(manifest.lock);
  return loadPyodide({ indexURL: new URL(manifest.core, ROOT).href, lockFileContents, ...more });
}

/**
 * @param {RuntimeManifest} manifest
 * @returns {Promise<PyodideModule>}
 */
const interpreter = ({ core }) => import(`${new URL(core, ROOT).href}pyodide.mjs`);

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
