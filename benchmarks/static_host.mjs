// Serves a folder as a static HTTPS host does: HTTP/2, compressed, with cache headers.
//
//   node static_host.mjs FOLDER CERTIFICATE KEY
//
// Prints its port, then the path of each request, and ends when its input ends. What was compressed
// once is kept.

import { createHash } from "node:crypto";
import { readFileSync, readdirSync } from "node:fs";
import { createSecureServer } from "node:http2";
import { extname, join, relative, sep } from "node:path";
import { constants, brotliCompressSync, gzipSync } from "node:zlib";

const [folder, certificate, key] = process.argv.slice(2);

const TYPES = {
  ".css": "text/css; charset=utf-8",
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".json": "application/json",
  ".mjs": "text/javascript; charset=utf-8",
  ".png": "image/png",
  ".svg": "image/svg+xml; charset=utf-8",
  ".txt": "text/plain; charset=utf-8",
  ".wasm": "application/wasm",
  ".webmanifest": "application/manifest+json",
  ".woff2": "font/woff2",
  ".xml": "application/xml",
};
const PACKED = new Set([".gz", ".jpg", ".png", ".whl", ".woff2", ".zip"]);
const QUALITY = 6; // of brotli: what a host has time for while a phone waits

/** Files whose address holds a hash of them never change; of all others the phone asks each time. */
const isFixed = (path) => /^runtime\/[^/]+\/[^/]+$/.test(path);

function* walk(place) {
  for (const entry of readdirSync(place, { withFileTypes: true })) {
    const path = join(place, entry.name);
    if (entry.isDirectory()) yield* walk(path);
    else yield path;
  }
}

const kept = new Map();

function answerFor(path) {
  if (!kept.has(path)) kept.set(path, prepare(path));
  return kept.get(path);
}

function prepare(path) {
  const content = readFileSync(join(folder, path));
  const ending = extname(path);
  const headers = {
    "content-type": TYPES[ending] ?? "application/octet-stream",
    "cache-control": isFixed(path) ? "public, max-age=31536000, immutable" : "public, max-age=0, must-revalidate",
    etag: `"${createHash("sha256").update(content).digest("hex").slice(0, 16)}"`,
    vary: "accept-encoding",
    "x-content-type-options": "nosniff",
    "strict-transport-security": "max-age=31536000",
  };
  if (PACKED.has(ending)) return { headers, bodies: { identity: content } };
  const br = brotliCompressSync(content, { params: { [constants.BROTLI_PARAM_QUALITY]: QUALITY } });
  return { headers, bodies: { br, gzip: gzipSync(content, { level: 9 }), identity: content } };
}

function fileOf(url) {
  const path = decodeURIComponent(new URL(url, "https://localhost").pathname).slice(1);
  const file = path === "" || path.endsWith("/") ? `${path}index.html` : path;
  return files.has(file) ? file : null;
}

function respond(request, answer) {
  console.log(request.url);
  const file = fileOf(request.url);
  const { headers, bodies } = answerFor(file ?? "404.html");
  if (file && request.headers["if-none-match"] === headers.etag) {
    answer.writeHead(304, headers).end();
    return;
  }
  const [, start] = /^bytes=(\d+)-$/.exec(request.headers.range ?? "") ?? [];
  if (file && start) {
    sendRest(answer, answerFor(file), Number(start));
    return;
  }
  const accepted = request.headers["accept-encoding"] ?? "";
  const encoding = ["br", "gzip"].find((name) => bodies[name] && accepted.includes(name)) ?? "identity";
  const encoded = encoding === "identity" ? {} : { "content-encoding": encoding };
  const length = { "content-length": bodies[encoding].length };
  answer.writeHead(file ? 200 : 404, { ...headers, ...encoded, ...length });
  answer.end(request.method === "HEAD" ? undefined : bodies[encoding]);
}

function sendRest(answer, { headers, bodies }, start) {
  const rest = bodies.identity.subarray(start);
  const range = `bytes ${start}-${bodies.identity.length - 1}/${bodies.identity.length}`;
  answer.writeHead(206, { ...headers, "content-range": range, "content-length": rest.length });
  answer.end(rest);
}

const files = new Set([...walk(folder)].map((path) => relative(folder, path).split(sep).join("/")));
const secrets = { cert: readFileSync(certificate), key: readFileSync(key), allowHTTP1: true };
const server = createSecureServer(secrets, respond);
server.listen(0, "localhost", () => console.log(server.address().port));
process.stdin.on("end", () => process.exit()).resume();
