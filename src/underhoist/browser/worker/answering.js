/** What a page that asks for a file is given. */
import { listed, proven } from "./list.js";
import { SCOPE, asAnswer, runtimeStore } from "./store.js";

/**
 * @param {Request} request
 * @param {URL} url
 * @returns {Promise<Response>}
 */
export async function answer(request, url) {
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
