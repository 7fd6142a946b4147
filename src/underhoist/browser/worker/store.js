/** Where things are kept, and how a stored file is put into an answer. */

export const worker = /** @type {ServiceWorkerGlobalScope} */ (/** @type {unknown} */ (self));
export const SCOPE = worker.registration.scope;

/** What pages listen to. */
export const news = new BroadcastChannel(`underhoist-text ${SCOPE}`);

/** @type {Promise<Cache> | undefined} */
let opened;

/** Opened once: thousands of files go through it. */
export const store = () => (opened ??= caches.open(`underhoist-text ${SCOPE}`).catch(openAgain));

/**
 * @param {unknown} error
 * @returns {never}
 */
function openAgain(error) {
  opened = undefined;
  throw error;
}

export const runtimeStore = () => caches.open(`underhoist-runtime ${SCOPE}`);

const TYPES = new Map(Object.entries({
  css: "text/css", html: "text/html", js: "text/javascript", json: "application/json",
  png: "image/png", jpg: "image/jpeg", svg: "image/svg+xml", txt: "text/plain", webp: "image/webp",
  webmanifest: "application/manifest+json", woff2: "font/woff2", xml: "application/xml",
}));

/** @type {(path: string, sha: string) => string} */
export const keyOf = (path, sha) => `${SCOPE}${path}?sha=${sha}`;

/**
 * @param {string} path
 * @param {string} sha
 * @param {ArrayBuffer} bytes
 */
export async function keep(path, sha, bytes) {
  await (await store()).put(keyOf(path, sha), asAnswer(path, bytes));
}

/**
 * @param {string} path
 * @param {string} sha
 * @returns {Promise<ArrayBuffer | undefined>} what is stored, proven; nothing where it is gone or damaged
 */
export async function stored(path, sha) {
  const found = await (await store()).match(keyOf(path, sha));
  const bytes = await found?.arrayBuffer().catch(() => undefined); // a browser that died may leave half a file
  return bytes && (await hash(bytes)) === sha ? bytes : undefined;
}

/**
 * @param {string} path
 * @param {ArrayBuffer} bytes
 */
export function asAnswer(path, bytes) {
  const type = TYPES.get(path.split(".").at(-1) ?? "") ?? "application/octet-stream";
  const charset = /^text|json|xml/.test(type) ? "; charset=utf-8" : "";
  return new Response(bytes, { headers: { "content-type": type + charset, "content-length": `${bytes.byteLength}` } });
}

/**
 * @param {ArrayBuffer} bytes
 * @returns {Promise<string>} half of the SHA-256 in hex, as the build writes it
 */
export async function hash(bytes) {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return Array.from(digest.subarray(0, 16), (byte) => byte.toString(16).padStart(2, "0")).join("");
}
