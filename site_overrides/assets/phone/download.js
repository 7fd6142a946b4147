/** One file fetched in pieces that are kept, so that a broken line costs only the last piece. */

/** Bytes kept at once: small enough that little is lost, large enough that storing is cheap. */
const PIECE = 1 << 20;

/**
 * Fetches a file, continues where an earlier attempt ended, and returns it whole and verified.
 * @param {Cache} store keeps the pieces until the file is whole
 * @param {string} url
 * @param {string} sha256 in hex
 * @param {(bytes: number) => void} onBytes told how many bytes of this file are here
 * @returns {Promise<Uint8Array<ArrayBuffer>>}
 */
export async function download(store, url, sha256, onBytes) {
  const kept = await keptPieces(store, url);
  const isContinued = kept.length > 0;
  const whole = await fetchRest(store, url, kept, onBytes).catch(async (error) => {
    if (!(error instanceof TypeError)) await dropPieces(store, url); // A lost connection keeps its pieces.
    throw error;
  });
  if ((await hash(whole)) === sha256) return whole;
  await dropPieces(store, url); // A damaged file must not be continued: once, it is fetched from its beginning.
  if (isContinued) return download(store, url, sha256, onBytes);
  throw new Error(`${url} arrived damaged`);
}

/**
 * @param {Response} packed with gzip
 * @returns {Promise<ArrayBuffer>}
 */
export function unpack(packed) {
  const body = /** @type {ReadableStream<Uint8Array<ArrayBuffer>>} */ (packed.body);
  return new Response(body.pipeThrough(new DecompressionStream("gzip"))).arrayBuffer();
}

/**
 * @param {BufferSource} bytes
 * @returns {Promise<string>} SHA-256 in hex
 */
export async function hash(bytes) {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, "0")).join("");
}

/**
 * @param {Cache} store
 * @param {string} url
 */
export async function dropPieces(store, url) {
  for (let index = 0; await store.delete(pieceUrl(url, index)); index++);
}

/**
 * @param {string} url
 * @param {number} index
 */
const pieceUrl = (url, index) => `${url}?piece=${index}`;

/**
 * @param {Cache} store
 * @param {string} url
 * @returns {Promise<Uint8Array<ArrayBuffer>[]>}
 */
async function keptPieces(store, url) {
  const pieces = [];
  for (let index = 0; ; index++) {
    const response = await store.match(pieceUrl(url, index));
    if (!response) return pieces;
    const piece = await response.arrayBuffer().catch(() => null);
    if (!piece) return pieces; // A browser that was killed may have written half of it.
    pieces.push(new Uint8Array(piece));
  }
}

/**
 * @param {Cache} store
 * @param {string} url
 * @param {Uint8Array<ArrayBuffer>[]} pieces
 * @param {(bytes: number) => void} onBytes
 */
async function fetchRest(store, url, pieces, onBytes) {
  const start = sum(pieces);
  // Without a Range header the host may compress, so a first attempt asks for the whole file.
  const response = await fetch(url, start ? { headers: { Range: `bytes=${start}-` } } : {});
  const isRest = response.status === 206;
  if (response.status !== 200 && !isRest) throw new Error(`${url} did not arrive (${response.status})`);
  if (!isRest) pieces.length = 0;
  const reader = /** @type {ReadableStream<Uint8Array<ArrayBuffer>>} */ (response.body).getReader();
  /** @type {Uint8Array<ArrayBuffer>[]} */
  let loose = [];
  for (let next = await reader.read(); !next.done; next = await reader.read()) {
    loose.push(next.value);
    onBytes(sum(pieces) + sum(loose));
    if (sum(loose) >= PIECE) {
      await store.put(pieceUrl(url, pieces.length), new Response(join(loose)));
      pieces.push(join(loose));
      loose = [];
    }
  }
  return join([...pieces, ...loose]);
}

/** @param {Uint8Array[]} parts */
const sum = (parts) => parts.reduce((total, part) => total + part.length, 0);

/** @param {Uint8Array[]} parts */
function join(parts) {
  const whole = new Uint8Array(sum(parts));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
