/** How a file of the runtime gets into its store: by pages, and by the service worker for an update. */
import { download, dropPieces, hash, unpack } from "./download.js";
import { ROOT, RUNTIME_STORE, VERIFIED, keptAt } from "./site.js";

/** @typedef {import("./site.js").StoredFile} StoredFile */

/** Content types that the browser insists on, by ending. */
const TYPES = new Map([
  ["wasm", "application/wasm"],
  ["mjs", "text/javascript"],
  ["js", "text/javascript"],
  ["json", "application/json"],
]);

/**
 * Works with the store while nobody else does: two windows would fetch everything twice.
 * @param {(store: Cache) => Promise<void>} act
 * @returns {Promise<void>}
 */
export const alone = (act) => navigator.locks.request(`store ${RUNTIME_STORE}`, async () => act(await caches.open(RUNTIME_STORE)));

/**
 * Those of the files that are not stored.
 * @param {Cache} store
 * @param {StoredFile[]} files
 */
export async function missingFiles(store, files) {
  const found = await Promise.all(files.map((file) => store.match(keptAt(file))));
  return files.filter((file, index) => found[index]?.headers.get(VERIFIED) !== markOf(file));
}

/**
 * Fetches a file, and stores it once it is verified.
 * @param {Cache} store
 * @param {StoredFile} file
 * @param {(bytes: number) => void} onBytes
 */
export async function fetchInto(store, file, onBytes) {
  const { url, sha256, stored_sha256 } = file;
  const address = new URL(url, ROOT).href;
  const arrived = await download(store, address, sha256, onBytes);
  const content = stored_sha256 ? await unpackWhole(arrived, stored_sha256) : arrived;
  const type = TYPES.get(keptAt(file).split(".").at(-1) ?? "") ?? "application/octet-stream";
  const headers = { "content-type": type, "content-length": `${content.byteLength}`, [VERIFIED]: markOf(file) };
  await store.put(keptAt(file), new Response(content, { headers }));
  await dropPieces(store, address);
}

/**
 * What says that a file was verified: the hash of what arrived, or of what it is where a file of another
 * version may be the same, packed otherwise.
 * @param {StoredFile} file
 */
const markOf = ({ sha256, stored_sha256 = sha256, stored_url }) => (stored_url ? stored_sha256 : sha256);

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
