/** The second stage: what the calculators run on, fetched once, verified, resumed where it broke. */
import { hash } from "./download.js";
import { keepCopy } from "./quick-copy.js";
import { alone, fetchInto, missingFiles } from "./runtime-files.js";
import { ROOT, RUNTIME_STORE, TEXT_STORE, keptAt, readJson } from "./site.js";

/** @typedef {import("./site.js").StoredFile} StoredFile */
/** @typedef {import("./site.js").RuntimeManifest} RuntimeManifest */
/** @typedef {{stored: number, wanted: number}} Bytes */

/**
 * How much of what the version in use runs on is stored and verified, in bytes.
 * @returns {Promise<Bytes & {version: string}>}
 */
export async function runtimeState() {
  const files = await filesInUse();
  const missing = await missingFiles(await caches.open(RUNTIME_STORE), files);
  const wanted = total(files);
  const version = files.map((file) => file.sha256).join(" ");
  return { stored: wanted - total(missing), wanted, version };
}

/**
 * Fetches what the version in use is missing, one window at a time.
 * @param {(bytes: Bytes) => void} onProgress
 */
export function storeRuntime(onProgress) {
  return alone(async (store) => {
    const manifest = await readManifest();
    const { files } = manifest;
    const missing = await missingFiles(store, files);
    const wanted = total(files);
    let stored = wanted - total(missing);
    for (const file of missing) {
      await fetchInto(store, file, (bytes) => onProgress({ stored: stored + bytes, wanted }));
      stored += file.size;
      onProgress({ stored, wanted });
    }
    await dropOthers(store, await wantedFiles());
    await keepCopy(manifest).catch(() => {}); // the store serves without it
  });
}

/**
 * Reads every stored file again and drops those whose content is not what it should be.
 * @returns {Promise<number>} how many were dropped
 */
export async function dropDamaged() {
  const store = await caches.open(RUNTIME_STORE);
  let dropped = 0;
  for (const file of await wantedFiles()) {
    const response = await store.match(keptAt(file));
    if (!response || (await isWhole(response, file))) continue;
    await store.delete(keptAt(file));
    dropped++;
  }
  return dropped;
}

/**
 * @param {Response} response
 * @param {StoredFile} file
 */
async function isWhole(response, { sha256, stored_sha256 = sha256 }) {
  const bytes = await response.arrayBuffer().catch(() => null); // a browser that was killed may leave half a file
  return bytes !== null && (await hash(bytes)) === stored_sha256;
}

/** @returns {Promise<RuntimeManifest>} */
const readManifest = () => readJson("runtime/manifest.json");

/** What the version in use runs on. */
const filesInUse = async () => (await readManifest()).files;

/** @returns {Promise<StoredFile[]>} files of every version that is stored, and of the one in use */
async function wantedFiles() {
  const stored = (await storedManifests()).flatMap(({ files }) => files);
  return [...new Map([...(await filesInUse()), ...stored].map((file) => [file.url, file])).values()];
}

/**
 * Every runtime list that is stored: of the version in use, and of one that waits.
 * @returns {Promise<RuntimeManifest[]>}
 */
async function storedManifests() {
  const store = await caches.open(TEXT_STORE);
  const found = await store.matchAll(new URL("runtime/manifest.json", ROOT), { ignoreSearch: true });
  const read = await Promise.allSettled(found.map((each) => each.json()));
  return read.flatMap((each) => (each.status === "fulfilled" ? each.value : [])); // a damaged one is fetched again
}

/**
 * @param {Cache} store
 * @param {StoredFile[]} files
 */
async function dropOthers(store, files) {
  const wanted = new Set(files.flatMap((file) => [keptAt(file), new URL(file.url, ROOT).href]));
  for (const request of await store.keys()) {
    const [address = ""] = request.url.split("?"); // pieces of a file stay with it
    if (!wanted.has(address)) await store.delete(request);
  }
}

/** @param {StoredFile[]} files */
const total = (files) => files.reduce((bytes, { size }) => bytes + size, 0);
