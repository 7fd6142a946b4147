/** The list of a version's files, bundle by bundle. It is stored last: where it is, the version is whole. */
import { fetched } from "./arriving.js";
import { SCOPE, keep, store, stored } from "./store.js";
import { VERSION } from "./version.js";

/** @typedef {[path: string, size: number, sha: string]} Listed */
/** @typedef {[size: number, sha: string]} Part */
/** @typedef {{url: string, sha: string, files: Listed[], parts?: Part[]}} Bundle with parts where its one file is large */

export const LIST = "offline/files.json";

/**
 * @param {ArrayBuffer} list
 * @returns {Bundle[]}
 */
export const bundlesOf = (list) => JSON.parse(new TextDecoder().decode(list)).bundles;

/** @param {string} url of something stored */
export const isList = (url) => url.startsWith(`${SCOPE}${LIST}?`);

/**
 * Lists of every version that is stored whole; a damaged one is left out.
 * @returns {Promise<ArrayBuffer[]>}
 */
export async function storedLists() {
  const keys = (await (await store()).keys()).map(({ url }) => url).filter(isList);
  const read = await Promise.all(keys.map((url) => stored(LIST, url.split("?sha=")[1] ?? "")));
  return read.filter((each) => each !== undefined);
}

/** @type {Promise<Map<string, string>> | undefined} */
let known;

/** Hashes of this version's files by path. */
export const listed = () => (known ??= readList());

async function readList() {
  const text = await proven(LIST, VERSION).catch(() => null);
  if (!text) return fromKeys();
  const pairs = bundlesOf(text.bytes).flatMap(({ files }) => files.map(([path, , sha]) => /** @type {const} */ ([path, sha])));
  return new Map([...pairs, [LIST, VERSION]]);
}

/** The list is damaged and there is no connection: what is stored can be read nevertheless. */
async function fromKeys() {
  known = undefined;
  const keys = await (await store()).keys();
  return new Map(keys.map(({ url }) => /** @type {[string, string]} */ (url.slice(SCOPE.length).split("?sha="))));
}

/**
 * Reads a stored file and proves it; what is damaged or gone is fetched again.
 * @param {string} path
 * @param {string} sha
 */
export async function proven(path, sha) {
  const bytes = await stored(path, sha);
  if (bytes) return { bytes, isMended: false };
  const fresh = await fetched(path, sha);
  await keep(path, sha, fresh);
  return { bytes: fresh, isMended: true };
}
