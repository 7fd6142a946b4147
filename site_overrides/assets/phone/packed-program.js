/** The interpreter's program, WebAssembly, is 9 MB of which a host need send only a third. */
import { ROOT, inRuntimeStore, keptAt } from "./site.js";

/**
 * In place of a worker's own fetch: what asks for the program by its name gets it unpacked. On the
 * phone it is stored so; a host holds it packed, since many pack no file of that kind, and none one
 * that is continued where the line broke.
 * @param {import("./site.js").StoredFile[]} files
 * @returns {typeof fetch}
 */
export function unpackingFetch(files) {
  const plain = fetch;
  const packed = new Map(files.filter((file) => file.stored_url).map((file) => [keptAt(file), new URL(file.url, ROOT)]));
  return async (asked, init) => {
    const address = String(asked instanceof Request ? asked.url : asked);
    const source = packed.get(address);
    if (!source) return plain(asked, init);
    const stored = await inRuntimeStore(address);
    // Through the service worker, so that the browser may keep what it compiled.
    return stored ? plain(asked, init).then((answer) => (answer.ok ? answer : stored), () => stored) : unpacked(await plain(source));
  };
}

/** @param {Response} arrived */
function unpacked({ ok, status, body }) {
  if (!ok || !body) return new Response(null, { status });
  return new Response(body.pipeThrough(new DecompressionStream("gzip")), { headers: { "content-type": "application/wasm" } });
}
