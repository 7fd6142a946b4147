// The service worker: stores the manual, answers from the store, and proves every file by its hash.
// A plain script without imports, for every phone; the build fills in what stands in __…__.

/** @typedef {[path: string, size: number, sha: string]} Listed */
/** @typedef {[size: number, sha: string]} Part */
/** @typedef {{url: string, sha: string, files: Listed[], parts?: Part[]}} Bundle with parts where its one file is large */

/** The hash of this version's list of files. A changed page changes it, and so this script. */
const VERSION = "__VERSION__";
const LIST = "offline/files.json";
const LINES = "offline/lines.json"; // the hash of each of its lines
const FILES = Number("__FILES__");
const SIZE = Number("__SIZE__"); // bytes, unpacked

const TYPES = new Map(Object.entries({
  css: "text/css", html: "text/html", js: "text/javascript", json: "application/json",
  png: "image/png", jpg: "image/jpeg", svg: "image/svg+xml", txt: "text/plain", webp: "image/webp",
  webmanifest: "application/manifest+json", woff2: "font/woff2", xml: "application/xml",
}));

/** Requests under way at once: a slow line answers late, and then all together. */
const AT_ONCE = 4;

/** Least time between two words on how far it is, in ms: a screen reader says each of them. */
const PAUSE = 400;

const worker = /** @type {ServiceWorkerGlobalScope} */ (/** @type {unknown} */ (self));
const SCOPE = worker.registration.scope;
const news = new BroadcastChannel(`underhoist-text ${SCOPE}`);
const store = () => caches.open(`underhoist-text ${SCOPE}`);
const runtimeStore = () => caches.open(`underhoist-runtime ${SCOPE}`);

/** @type {(path: string, sha: string) => string} */
const keyOf = (path, sha) => `${SCOPE}${path}?sha=${sha}`;

worker.addEventListener("install", (event) => event.waitUntil(storeAll()));
worker.addEventListener("activate", (event) => event.waitUntil(takeOver()));
worker.addEventListener("message", (event) => event.waitUntil(told(event)));
worker.addEventListener("fetch", (event) => {
  const url = new URL(event.request.url);
  if (event.request.method !== "GET" || !url.href.startsWith(SCOPE)) return;
  event.respondWith(answer(event.request, url));
});

// Storing: all of it before this version is ready; what an earlier attempt or version left is kept.

async function storeAll() {
  const progress = { stored: 0, wanted: FILES, said: 0 };
  try {
    const older = await olderLists();
    const text = (await linesFetched(older)) ?? (await fetched(LIST, VERSION));
    const bundles = bundlesOf(text);
    const held = new Set((await (await store()).keys()).map(({ url }) => url));
    const isMissing = (/** @type {Listed} */ [path, , sha]) => !held.has(keyOf(path, sha));
    progress.stored = FILES - bundles.flatMap(({ files }) => files.filter(isMissing)).length;
    const more = () => tell(progress);
    await inTurns(bundles, async (bundle) => {
      const missing = bundle.files.filter(isMissing);
      if (!missing.length || (await partsFetched(bundle, older, more))) return;
      await storeBundle(bundle, missing, more);
    });
    await keep(LIST, VERSION, text);
  } catch (error) {
    news.postMessage({ ...progress, failed: error instanceof Error ? error.name : String(error) });
    throw error;
  }
}

/**
 * Takes the whole bundle where most of it is missing, and otherwise file by file.
 * @param {Bundle} bundle
 * @param {Listed[]} missing
 * @param {() => void} more
 */
async function storeBundle(bundle, missing, more) {
  if (2 * bytesOf(missing) > bytesOf(bundle.files) && (await unpackBundle(bundle, missing, more))) return;
  await inTurns(missing, async ([path, , sha]) => {
    await keep(path, sha, await fetched(path, sha));
    more();
  });
}

/**
 * @param {Bundle} bundle
 * @param {Listed[]} missing
 * @param {() => void} more
 * @returns {Promise<boolean>} false where it is not as the list has it
 */
async function unpackBundle({ url, sha, files }, missing, more) {
  const packed = await fetched(url, sha).catch(unlessOffline);
  if (!packed) return false;
  const whole = await unpack(packed);
  const wanted = new Set(missing.map(([path]) => path));
  let at = 0;
  for (const [path, size, sha] of files) {
    const bytes = whole.slice(at, (at += size));
    if (!wanted.has(path)) continue;
    if ((await hash(bytes)) !== sha) throw new Error(`${path} was packed damaged`);
    await keep(path, sha, bytes);
    more();
  }
  return true;
}

// An update: of the list the lines that changed, of a large file the parts.

/** Lists of versions that were stored before, whole or not. */
async function olderLists() {
  const found = await (await store()).matchAll(SCOPE + LIST, { ignoreSearch: true });
  return Promise.all(found.map((each) => each.arrayBuffer()));
}

/**
 * @param {ArrayBuffer[]} older
 * @returns {Promise<ArrayBuffer | null>} null where it has to be fetched whole
 */
async function linesFetched(older) {
  if (!older.length) return null;
  const known = await byHash(older.flatMap(linesOf));
  /** @type {string[] | null} */
  const wanted = await fetch(SCOPE + LINES, { cache: "no-cache" }).then((answer) => (answer.ok ? answer.json() : null)).catch(unlessOffline);
  return wanted && joined(wanted, known, VERSION);
}

/** @param {ArrayBuffer} text */
function linesOf(text) {
  const bytes = new Uint8Array(text);
  const lines = [];
  for (let at = 0, end = 0; at < bytes.length; at = end) {
    end = bytes.indexOf(10, at) + 1 || bytes.length;
    lines.push(text.slice(at, end));
  }
  return lines;
}

/**
 * Stores a large file, put together from an older one's parts and those that changed.
 * @param {Bundle} bundle
 * @param {ArrayBuffer[]} older
 * @param {() => void} more
 * @returns {Promise<boolean>} false where it has to be fetched whole
 */
async function partsFetched({ files: [file], parts }, older, more) {
  if (!file || !parts) return false;
  const [path, , sha] = file;
  const known = await byHash((await Promise.all(older.map((list) => olderParts(list, path)))).flat());
  const whole = await joined(parts.map(([, hashed]) => hashed), known, sha);
  if (!whole) return false;
  await keep(path, sha, whole);
  more();
  return true;
}

/**
 * @param {ArrayBuffer} list
 * @param {string} path
 */
async function olderParts(list, path) {
  const bundle = bundlesOf(list).find(({ files: [file] }) => file?.[0] === path);
  const stored = bundle?.parts && (await (await store()).match(keyOf(path, bundle.files[0]?.[2] ?? "")));
  const bytes = await stored?.arrayBuffer();
  let at = 0;
  return bytes ? (bundle?.parts ?? []).map(([size]) => bytes.slice(at, (at += size))) : [];
}

/** @param {ArrayBuffer[]} parts */
const byHash = async (parts) => new Map(await Promise.all(parts.map(async (part) => /** @type {const} */ ([await hash(part), part]))));

/**
 * @param {string[]} wanted hashes of all parts, in order
 * @param {Map<string, ArrayBuffer>} known
 * @param {string} sha of the whole
 * @returns {Promise<ArrayBuffer | null>} null where most of it would have to be fetched, or it is not what it should be
 */
async function joined(wanted, known, sha) {
  const missing = [...new Set(wanted)].filter((each) => !known.has(each));
  if (2 * missing.length > wanted.length) return null;
  try {
    await inTurns(missing, async (each) => void known.set(each, await fetchedPart(each)));
  } catch (error) {
    return unlessOffline(error);
  }
  const whole = await new Blob(wanted.map((each) => known.get(each) ?? new ArrayBuffer(0))).arrayBuffer();
  return (await hash(whole)) === sha ? whole : null;
}

/** @param {string} sha of the part, unpacked */
async function fetchedPart(sha) {
  const arrived = await fetch(`${SCOPE}offline/parts/${sha.slice(0, 12)}.bin`, { cache: "no-cache" });
  const bytes = arrived.ok ? await arrived.arrayBuffer() : null;
  if (!bytes) throw new Error("a part did not arrive");
  return unpack(bytes).catch(() => bytes); // Damaged: the whole, then, is not what it should be.
}

/**
 * @param {unknown} error
 * @returns {null}
 */
function unlessOffline(error) {
  if (error instanceof TypeError) throw error; // no connection: nothing else would arrive either
  return null;
}

/** @param {ArrayBuffer} packed */
const unpack = (packed) => new Response(new Blob([packed]).stream().pipeThrough(new DecompressionStream("gzip"))).arrayBuffer();

/**
 * @param {ArrayBuffer} list
 * @returns {Bundle[]}
 */
const bundlesOf = (list) => JSON.parse(new TextDecoder().decode(list)).bundles;

/** @param {Listed[]} files */
const bytesOf = (files) => files.reduce((sum, [, size]) => sum + size, 0);

/**
 * Counts one more file as stored, and tells the pages now and then.
 * @param {{stored: number, wanted: number, said: number}} progress
 */
function tell(progress) {
  progress.stored++;
  if (Date.now() - progress.said < PAUSE && progress.stored < FILES) return;
  progress.said = Date.now();
  news.postMessage(progress);
}

/**
 * @template T
 * @param {T[]} items
 * @param {(item: T) => Promise<void>} act
 */
async function inTurns(items, act) {
  const rest = items.values();
  const one = async () => {
    for (const item of rest) await act(item);
  };
  await Promise.all(Array.from({ length: AT_ONCE }, one));
}

/**
 * Fetches a file and proves it. A TypeError means that there is no connection.
 * @param {string} path
 * @param {string} sha
 * @returns {Promise<ArrayBuffer>}
 */
async function fetched(path, sha) {
  for (const cache of /** @type {const} */ (["no-cache", "reload"])) {
    const arrived = await fetch(SCOPE + path, { cache });
    const bytes = await arrived.arrayBuffer();
    if (arrived.ok && (await hash(bytes)) === sha) return bytes;
  }
  throw new Error(`${path} did not arrive whole`);
}

/**
 * @param {string} path
 * @param {string} sha
 * @param {ArrayBuffer} bytes
 */
async function keep(path, sha, bytes) {
  await (await store()).put(keyOf(path, sha), asAnswer(path, bytes));
}

/**
 * @param {string} path
 * @param {ArrayBuffer} bytes
 */
function asAnswer(path, bytes) {
  const type = TYPES.get(path.split(".").at(-1) ?? "") ?? "application/octet-stream";
  const charset = /^text|json|xml/.test(type) ? "; charset=utf-8" : "";
  return new Response(bytes, { headers: { "content-type": type + charset, "content-length": `${bytes.byteLength}` } });
}

/** @param {ArrayBuffer} bytes */
async function hash(bytes) {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return Array.from(digest.subarray(0, 16), (byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** From now on this version answers: what only earlier ones had is dropped. */
async function takeOver() {
  await worker.clients.claim();
  const wanted = new Set([...(await listed())].map(([path, sha]) => keyOf(path, sha)));
  const all = await store();
  for (const request of await all.keys()) if (!wanted.has(request.url)) await all.delete(request);
}

// Answering.

/** @type {Promise<Map<string, string>> | undefined} */
let known;

/** Hashes of this version's files by path. */
const listed = () => (known ??= readList());

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
async function proven(path, sha) {
  const stored = await (await store()).match(keyOf(path, sha));
  const bytes = await stored?.arrayBuffer();
  if (bytes && (await hash(bytes)) === sha) return { bytes, isMended: false };
  const fresh = await fetched(path, sha);
  await keep(path, sha, fresh);
  return { bytes: fresh, isMended: true };
}

/**
 * @param {Request} request
 * @param {URL} url
 * @returns {Promise<Response>}
 */
async function answer(request, url) {
  const address = url.origin + url.pathname;
  const path = address.slice(SCOPE.length);
  if (/^runtime\/[^/]+\/[^/]+$/.test(path)) return (await (await runtimeStore()).match(address)) ?? fetch(request);
  const files = await listed();
  const file = path === "" || path.endsWith("/") ? `${path}index.html` : path;
  const sha = files.get(file);
  if (sha) return fromStore(file, sha, request);
  if (request.mode !== "navigate") return fetch(request);
  if (files.has(`${path}/index.html`)) return Response.redirect(`${address}/${url.search}`, 302);
  return fetch(request).catch(() => noSuchPage(files));
}

/**
 * @param {string} file
 * @param {string} sha
 * @param {Request} request
 */
async function fromStore(file, sha, request) {
  try {
    return asAnswer(file, (await proven(file, sha)).bytes);
  } catch {
    // The site may hold a newer text by now: better that than none.
    return fetch(request).catch(() => (request.mode === "navigate" ? damaged() : Response.error()));
  }
}

/** @param {Map<string, string>} files */
async function noSuchPage(files) {
  const { bytes } = await proven("404.html", files.get("404.html") ?? "");
  return new Response(bytes, { status: 404, headers: { "content-type": "text/html; charset=utf-8" } });
}

function damaged() {
  const html = `<!doctype html><html lang="en-GB"><meta charset="utf-8">
<meta name="viewport" content="width=device-width,initial-scale=1"><title>This page is damaged</title>
<link rel="stylesheet" href="${SCOPE}assets/underhoist.css"><main class="uh-sheet" id="damaged">
<div class="uh-sheet__inner"><h1>This page is damaged</h1><p>What this phone has stored of it is not what was
written, so it is not shown. With a connection it is fetched again: then load this page again.</p>
<p>The rest can be read: <a href="${SCOPE}">Start of the manual</a></p></div></main></html>`;
  return new Response(html, { status: 503, headers: { "content-type": "text/html; charset=utf-8" } });
}

// What pages ask.

/** @param {ExtendableMessageEvent} event */
async function told({ data, ports: [port] }) {
  if (data?.type === "SKIP_WAITING") await worker.skipWaiting();
  if (data?.type === "STATE") port?.postMessage({ version: VERSION, files: FILES, size: SIZE, isWhole: await isWhole() });
  if (data?.type === "CHECK") port?.postMessage(await checkAll());
}

/** Whether the list, which is stored last, is there. The browser clears all of a site or nothing. */
async function isWhole() {
  return (await (await store()).match(keyOf(LIST, VERSION))) !== undefined;
}

/** Reads every stored file again; @returns how many were mended, and how many could not be. */
async function checkAll() {
  const found = { mended: 0, missing: 0 };
  for (const [path, sha] of await listed()) {
    await proven(path, sha).then(({ isMended }) => (found.mended += Number(isMended)), () => found.missing++);
  }
  return found;
}
