// The service worker: stores the manual, answers from the store, and proves every file by its hash.
// A plain script without imports, for every phone; the build fills in what stands in __…__.

/** @typedef {[path: string, size: number, sha: string]} Listed */
/** @typedef {{url: string, sha: string, files: Listed[]}} Bundle */

/** The hash of this version's list of files. A changed page changes it, and so this script. */
const VERSION = "__VERSION__";
const LIST = "offline/files.json";
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
    const text = await fetched(LIST, VERSION);
    /** @type {Bundle[]} */
    const bundles = JSON.parse(new TextDecoder().decode(text)).bundles;
    const held = new Set((await (await store()).keys()).map(({ url }) => url));
    const isMissing = (/** @type {Listed} */ [path, , sha]) => !held.has(keyOf(path, sha));
    progress.stored = FILES - bundles.flatMap(({ files }) => files.filter(isMissing)).length;
    const more = () => tell(progress);
    await inTurns(bundles, (bundle) => storeBundle(bundle, bundle.files.filter(isMissing), more));
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
  const packed = await fetched(url, sha).catch((error) => {
    if (error instanceof TypeError) throw error; // no connection: nothing else would arrive either
    return null;
  });
  if (!packed) return false;
  const whole = await new Response(new Blob([packed]).stream().pipeThrough(new DecompressionStream("gzip"))).arrayBuffer();
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
  /** @type {{bundles: Bundle[]}} */
  const { bundles } = JSON.parse(new TextDecoder().decode(text.bytes));
  const pairs = bundles.flatMap(({ files }) => files.map(([path, , sha]) => /** @type {const} */ ([path, sha])));
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
