/** Where the site is, and what its stores are called. */

/** Address of the site's front page, with a slash at the end. */
export const ROOT = new URL("../../", import.meta.url).href;

/** The store of pages and assets, which the service worker keeps. */
export const TEXT_STORE = `underhoist-text ${ROOT}`;

/** The store of runtime files. The service worker reads it; sites on one host keep apart. */
export const RUNTIME_STORE = `underhoist-runtime ${ROOT}`;

/** Put on a stored file once its content was compared with its hash, which it holds. */
export const VERIFIED = "x-underhoist-sha256";

/**
 * One of the files that the phone keeps; with `stored_sha256` it arrives packed and is kept unpacked,
 * at `stored_url` where that has a name of its own.
 * @typedef {{url: string, size: number, sha256: string, stored_sha256?: string, stored_url?: string}} StoredFile
 */

/**
 * Where a file is kept.
 * @param {StoredFile} file
 */
export const keptAt = ({ url, stored_url = url }) => new URL(stored_url, ROOT).href;

/**
 * Whether a file is a script of the interpreter, which the browser itself asks for.
 * @param {string} url
 */
export const isScript = (url) => /js$/.test(url);

/**
 * What is kept of the runtime at an address, read past the service worker.
 * @param {string} address
 * @returns {Promise<Response | undefined>}
 */
export async function inRuntimeStore(address) {
  return globalThis.caches?.match(address, { cacheName: RUNTIME_STORE });
}

/**
 * What the calculators run on: `runtime/manifest.json`. `memory` is what the image comes to.
 * @typedef {{pyodide: string, core: string, lock: object, wheels: string[], drafting: string[], image: string, memory: {size: number, sha256: string}, files: StoredFile[]}} RuntimeManifest
 */

/**
 * Reads a JSON file of the site.
 * @template T
 * @param {string} path from the site's root
 * @returns {Promise<T>}
 */
export async function readJson(path) {
  const response = await fetch(new URL(path, ROOT));
  if (!response.ok) throw new Error(`${path} did not arrive (${response.status})`);
  return response.json();
}
