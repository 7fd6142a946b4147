/**
 * What Python is brought up from, once more in one file of the browser's own: a thread reads that at once, and what
 * is in a store piece by piece through other processes, which takes half of the time until the first answer. It is
 * only ever a copy: whoever reads it proves it, and without it the store is read.
 *
 * First how many bytes each part has, then the parts. The sizes are written last: where they are, all is.
 */
import { ROOT, inRuntimeStore, isScript, keptAt } from "./site.js";
import { fillImage } from "./sparse-image.js";

/** @typedef {import("./site.js").RuntimeManifest} RuntimeManifest */

/** A folder for each site of a host. */
const FOLDER = `underhoist ${encodeURIComponent(ROOT)}`;

/**
 * The image first, then what the interpreter asks for.
 * @param {RuntimeManifest} manifest
 */
const partsOf = ({ files, core, image }) => [
  ...files.filter(({ url }) => url === image),
  ...files.filter(({ url }) => url.startsWith(core) && !isScript(url)),
];

/** @param {RuntimeManifest} manifest */
const nameOf = ({ core, image }) => encodeURIComponent(`${core}${image}`);

const folder = async () => (await navigator.storage.getDirectory()).getDirectoryHandle(FOLDER, { create: true });

/**
 * Fills the image's memory, which holds nothing but noughts before; it is of no use where this gives null.
 * @param {RuntimeManifest} manifest
 * @param {Uint8Array<ArrayBuffer>} image
 * @returns {Promise<Map<string, ArrayBuffer> | null>} what each other file holds, by its address; null where there is no
 *   copy that is whole
 */
export async function readCopy(manifest, image) {
  const file = await opened(manifest).catch(() => null);
  if (!file) return null;
  try {
    return partsIn(file, partsOf(manifest).map(({ url }) => url), image);
  } catch {
    return null;
  } finally {
    file.close();
  }
}

/**
 * Opens it for reading; several threads may. Rejects where it is not there, or not to be had in this browser.
 * @param {RuntimeManifest} manifest
 * @returns {Promise<FileSystemSyncAccessHandle>}
 */
async function opened(manifest) {
  const handle = await (await folder()).getFileHandle(nameOf(manifest));
  // @ts-ignore - this mode is newer than what the compiler knows; an older browser opens it for one thread at a time
  return handle.createSyncAccessHandle({ mode: "read-only" });
}

/**
 * @param {FileSystemSyncAccessHandle} file
 * @param {string[]} urls
 * @param {Uint8Array<ArrayBuffer>} image
 * @returns {Map<string, ArrayBuffer> | null}
 */
function partsIn(file, urls, image) {
  const read = (/** @type {Uint8Array<ArrayBuffer>} */ into, /** @type {number} */ at) => {
    if (file.read(into, { at }) < into.length) throw new RangeError("the copy is cut off");
  };
  const head = new Uint8Array(4 * urls.length);
  read(head, 0);
  const sizes = new Uint32Array(head.buffer);
  if (sizes.includes(0)) return null;
  fillImage(image, (into, at) => read(into, head.length + at));
  let at = head.length + (sizes[0] ?? 0);
  return new Map(urls.slice(1).map((url, index) => {
    const part = new Uint8Array(sizes[index + 1] ?? 0);
    read(part, at);
    at += part.length;
    return [url, part.buffer];
  }));
}

/**
 * Makes the copy out of the store, if there is none; those of other versions go. Rejects where that does not work.
 * @param {RuntimeManifest} manifest
 */
export async function keepCopy(manifest) {
  const name = nameOf(manifest);
  const place = await folder();
  for await (const each of place.keys()) if (each !== name) await place.removeEntry(each);
  const handle = await place.getFileHandle(name, { create: true });
  const parts = partsOf(manifest);
  const sizes = new Uint32Array(await (await handle.getFile()).slice(0, 4 * parts.length).arrayBuffer());
  if (sizes.length === parts.length && !sizes.includes(0)) return;
  const contents = await Promise.all(parts.map((file) => stored(keptAt(file))));
  try {
    await writeInto(handle, contents);
  } catch (error) {
    await place.removeEntry(name).catch(() => {}); // A phone without room needs it for other things.
    throw error;
  }
}

/**
 * @param {FileSystemFileHandle} handle
 * @param {Uint8Array<ArrayBuffer>[]} parts
 */
async function writeInto(handle, parts) {
  const file = await handle.createSyncAccessHandle();
  try {
    write(file, parts);
  } finally {
    file.close();
  }
}

/** @param {string} address */
async function stored(address) {
  const found = await inRuntimeStore(address);
  if (!found) throw new Error(`${address} is not stored`);
  return new Uint8Array(await found.arrayBuffer());
}

/**
 * @param {FileSystemSyncAccessHandle} file
 * @param {Uint8Array<ArrayBuffer>[]} parts
 */
function write(file, parts) {
  const sizes = Uint32Array.from(parts, ({ length }) => length);
  file.truncate(0);
  let at = sizes.byteLength;
  for (const part of parts) {
    if (file.write(part, { at }) < part.length) throw new RangeError("the copy was not written whole");
    at += part.length;
  }
  file.flush();
  file.write(sizes, { at: 0 });
  file.flush();
}

/** Takes every copy away, as after one was found to be damaged. */
export async function dropCopy() {
  await (await navigator.storage.getDirectory()).removeEntry(FOLDER, { recursive: true });
}
