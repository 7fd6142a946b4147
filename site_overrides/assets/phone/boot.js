/** Brings up Python with the calculators in it: from the build's memory image, or the slow way. */
import { unpack } from "./download.js";
import { ROOT, RUNTIME_STORE, VERIFIED, readJson } from "./site.js";
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
  const image = readImage(manifest.image);
  image.catch(() => {}); // Reported where it is awaited.
  return load(manifest, { _loadSnapshot: image });
}

/**
 * Starts Python from nothing, with the calculators' wheels unpacked.
 * @returns {Promise<Pyodide>}
 */
export async function startedAnew() {
  const manifest = await readManifest();
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
  /** @type {PyodideModule} */
  const { loadPyodide } = await import(`${core}pyodide.mjs`);
  return loadPyodide({ indexURL: core, lockFileContents: JSON.stringify(manifest.lock), ...more });
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
  const stored = await globalThis.caches?.match(new URL(url, ROOT), { cacheName: RUNTIME_STORE });
  const response = stored ?? (await read(url));
  return wholeImage(await (response.headers.has(VERIFIED) ? response.arrayBuffer() : unpack(response)));
}
