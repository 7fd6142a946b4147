/** The interpreter asks for its program, WebAssembly, and for Python's library; each is read once and proven. */
import { ROOT, inRuntimeStore, keptAt } from "./site.js";

/** @typedef {import("./site.js").StoredFile} StoredFile */

/** Asked for last: the interpreter begins when it is there. */
const LIBRARY = "/python_stdlib.zip";

/** What a browser wants to be told before it compiles. */
const WASM = { "content-type": "application/wasm" };

/** A worker's own, whatever is put in its place. */
const plain = globalThis.fetch;

/**
 * In place of a worker's own fetch.
 * @param {StoredFile[]} files
 * @param {object} given
 * @param {Map<string, ArrayBuffer>} given.copy what of them is read already
 * @param {Promise<unknown>} given.ready the library waits for it
 * @param {(file: StoredFile, content: Promise<ArrayBuffer>) => void} given.read is told what is read
 * @returns {typeof fetch}
 */
export function interpreterFetch(files, { copy, ready, read }) {
  const known = new Map(files.map((file) => [keptAt(file), file]));
  return async (asked, init) => {
    const address = String(asked instanceof Request ? asked.url : asked);
    const file = known.get(address);
    if (!file) return plain(asked, init);
    const copied = copy.get(file.url);
    const answer = copied ? Promise.resolve(new Response(inOne(copied), { headers: WASM })) : arrived(address, file);
    read(file, copied ? Promise.resolve(copied) : answer.then((each) => each.clone().arrayBuffer()));
    if (address.endsWith(LIBRARY)) await ready.catch(() => {}); // Who waits for the image says so.
    return answer;
  };
}

/**
 * @param {string} address
 * @param {StoredFile} file
 */
async function arrived(address, file) {
  const answer = await (file.stored_url ? program(address, file) : plain(address));
  if (!answer.ok) throw new Error(`${file.url} did not arrive (${answer.status})`);
  return answer;
}

/**
 * On the phone it is stored as it is; a host holds it packed, a third as large, since many pack no file
 * of that kind, and none one that is continued where the line broke.
 * @param {string} address
 * @param {StoredFile} file
 */
async function program(address, file) {
  const stored = await inRuntimeStore(address);
  if (!stored) return unpacked(await plain(new URL(file.url, ROOT)));
  // Through the service worker, so that the browser may keep what it compiled.
  return plain(address).then((answer) => (answer.ok ? answer : stored), () => stored);
}

/**
 * A stream, for a buffer would be copied.
 * @param {ArrayBuffer} content
 */
const inOne = (content) =>
  new ReadableStream({
    start(stream) {
      stream.enqueue(new Uint8Array(content));
      stream.close();
    },
  });

/** @param {Response} arrived */
function unpacked({ ok, status, body }) {
  if (!ok || !body) return new Response(null, { status });
  return new Response(body.pipeThrough(new DecompressionStream("gzip")), { headers: WASM });
}
