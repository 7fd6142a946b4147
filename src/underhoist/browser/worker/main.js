/**
 * The service worker: stores the manual, answers from the store, and proves every file by its hash.
 * The build makes one plain script of these modules: not every phone takes a worker that imports.
 */
import { answer } from "./answering.js";
import { checkAll, isWhole, takeOver } from "./care.js";
import { SCOPE, worker } from "./store.js";
import { storeAll } from "./storing.js";
import { FILES, SIZE, VERSION } from "./version.js";

worker.addEventListener("install", (event) => event.waitUntil(storeAll()));
worker.addEventListener("activate", (event) => event.waitUntil(takeOver()));
worker.addEventListener("message", (event) => event.waitUntil(told(event)));
worker.addEventListener("fetch", (event) => {
  const url = new URL(event.request.url);
  if (event.request.method !== "GET" || !url.href.startsWith(SCOPE)) return;
  event.respondWith(answer(event.request, url));
});

/**
 * What pages ask.
 * @param {ExtendableMessageEvent} event
 */
async function told({ data, ports: [port] }) {
  if (data?.type === "SKIP_WAITING") await worker.skipWaiting();
  if (data?.type === "STATE") port?.postMessage({ version: VERSION, files: FILES, size: SIZE, isWhole: await isWhole() });
  if (data?.type === "CHECK") port?.postMessage(await checkAll());
}
