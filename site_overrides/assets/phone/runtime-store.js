/** The second stage: what the calculators run on, fetched once, verified, resumed where it broke. */
import { download, dropPieces, hash, unpack } from "./download.js";
import { ROOT, RUNTIME_STORE, TEXT_STORE, VERIFIED, readJson } from "./site.js";

/** @typedef {import("./site.js").StoredFile} StoredFile */
/** @typedef {import("./site.js").RuntimeManifest} RuntimeManifest */
/** @typedef {{stored: number, wanted: number}} Bytes */

/** Content types that the browser insists on, by ending. */
const TYPES = new Map([
  ["wasm", "application/wasm"],
  ["mjs", "text/javascript"],
  ["js", "text/javascript"],
  ["json", "application/json"],
]);

/**
 * How much of the runtime is stored and verified, in bytes.
 * @returns {Promise<Bytes & {version: string}>}
 */
export async function runtimeState() {
  const files = await wantedFiles();
  const missing = await missingFiles(await caches.open(RUNTIME_STORE), files);
  const wanted = total(files);
  const version = files.map((file) => file.sha256).join(" ");
  return { stored: wanted - total(missing), wanted, version };
}

/**
 * Fetches what is missing, one window at a time, then drops what no version needs any more.
 * @param {(bytes: Bytes) => void} onProgress
 */
export async function storeRuntime(onProgress) {
  await navigator.locks.request(`store ${RUNTIME_STORE}`, async () => {
    const store = await caches.open(RUNTIME_STORE);
    const files = await wantedFiles();
    const missing = await missingFiles(store, files);
    const wanted = total(files);
    let stored = wanted - total(missing);
    for (const file of missing) {
      await fetchInto(store, file, (bytes) => onProgress({ stored: stored + bytes, wanted }));
      stored += file.size;
      onProgress({ stored, wanted });
    }
    await dropOthers(store, files);
  });
}

/**
 * Reads every stored file again and drops those whose content is not what it should be.
 * @returns {Promise<number>} how many were dropped
 */
export async function dropDamaged() {
  const store = await caches.open(RUNTIME_STORE);
  let dropped = 0;
  for (const { url, sha256, stored_sha256 = sha256 } of await wantedFiles()) {
    const response = await store.match(new URL(url, ROOT));
    if (response && (await hash(await response.arrayBuffer())) !== stored_sha256) {
      await store.delete(new URL(url, ROOT));
      dropped++;
    }
  }
  return dropped;
}

/** @returns {Promise<StoredFile[]>} files of the version in use and of one that waits */
async function wantedFiles() {
  const manifests = await storedManifests();
  /** @type {RuntimeManifest[]} */
  const all = manifests.length ? manifests : [await readJson("runtime/manifest.json")];
  return [...new Map(all.flatMap(({ files }) => files).map((file) => [file.url, file])).values()];
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
async function missingFiles(store, files) {
  const found = await Promise.all(files.map(({ url }) => store.match(new URL(url, ROOT))));
  return files.filter((file, index) => found[index]?.headers.get(VERIFIED) !== file.sha256);
}

/**
 * @param {Cache} store
 * @param {StoredFile} file
 * @param {(bytes: number) => void} onBytes
 */
async function fetchInto(store, { url, sha256, stored_sha256 }, onBytes) {
  const address = new URL(url, ROOT).href;
  const arrived = await download(store, address, sha256, onBytes);
  const content = stored_sha256 ? await unpackWhole(arrived, stored_sha256) : arrived;
  const type = TYPES.get(url.split(".").at(-1) ?? "") ?? "application/octet-stream";
  const headers = { "content-type": type, "content-length": `${content.byteLength}`, [VERIFIED]: sha256 };
  await store.put(address, new Response(content, { headers }));
  await dropPieces(store, address);
}

/**
 * Unpacks once, here, so that nothing stands in the way when the file is wanted.
 * @param {Uint8Array<ArrayBuffer>} packed
 * @param {string} sha256 of what must come out
 */
async function unpackWhole(packed, sha256) {
  const content = await unpack(new Response(packed));
  if ((await hash(content)) !== sha256) throw new Error("a file was damaged while it was unpacked");
  return content;
}

/**
 * @param {Cache} store
 * @param {StoredFile[]} files
 */
async function dropOthers(store, files) {
  const wanted = new Set(files.map(({ url }) => new URL(url, ROOT).href));
  for (const request of await store.keys()) {
    if (!wanted.has(request.url)) await store.delete(request);
  }
}

/** @param {StoredFile[]} files */
const total = (files) => files.reduce((bytes, { size }) => bytes + size, 0);
