/** What Python is brought up from is what the build wrote, or it is not used: one wrong bit could change an answer. */
import { hash } from "./download.js";
import { ROOT, RUNTIME_STORE, inRuntimeStore, keptAt } from "./site.js";

/** @typedef {import("./site.js").RuntimeManifest} RuntimeManifest */
/** @typedef {import("./site.js").StoredFile} StoredFile */

/**
 * What was read from the copy is proven as memory.
 * @param {RuntimeManifest} manifest
 * @param {Uint8Array<ArrayBuffer>} image
 */
export async function proveMemory({ memory }, image) {
  if ((await hash(image)) !== memory.sha256) throw new Error("the copy of the image is damaged");
}

/**
 * @param {RuntimeManifest} manifest
 * @param {string} url
 * @param {ArrayBuffer} read
 */
export async function proveCopied({ files }, url, read) {
  const file = files.find((each) => each.url === url);
  if (file && !(await isAs(file, read))) throw new Error(`the copy of ${url} is damaged`);
}

/**
 * @param {StoredFile} file
 * @param {ArrayBuffer} bytes
 */
const isAs = async ({ sha256, stored_sha256 = sha256 }, bytes) => (await hash(bytes)) === stored_sha256;

/**
 * A stored file that is damaged is dropped, and then fetched again.
 * @param {RuntimeManifest} manifest
 * @param {string} url
 * @param {ArrayBuffer} [read] its content where it was read already
 */
export async function prove({ files }, url, read) {
  const file = files.find((each) => each.url === url);
  if (!file) return;
  const bytes = read ?? (await (await inRuntimeStore(keptAt(file)))?.arrayBuffer());
  // Not stored yet: where it cannot be had either, the interpreter would wait for it without a word.
  if (!bytes) await fetch(new URL(url, ROOT), { method: "HEAD" });
  if (!bytes || (await isAs(file, bytes))) return;
  await (await globalThis.caches?.open(RUNTIME_STORE))?.delete(keptAt(file));
  throw new Error(`${url} is damaged`);
}
