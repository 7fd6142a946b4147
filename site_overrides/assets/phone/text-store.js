/** The first stage: asks the service worker, which keeps the pages and assets, how they stand. */
import { ROOT, TEXT_STORE } from "./site.js";
import { noteStored } from "./since.js";

/** @typedef {{version: string, files: number, size: number, isWhole: boolean}} TextState */
/** @typedef {{stored: number, wanted: number}} Files */

/**
 * How the version in use stands, or null where none is stored. A service worker takes over only
 * when each of its files was stored and proven.
 * @returns {Promise<TextState | null>}
 */
export async function textState() {
  /** @type {TextState | null} */
  const state = await ask("STATE");
  if (state?.isWhole) noteStored("text", state.version);
  return state;
}

/**
 * Reads every stored file again; what is damaged or gone is fetched.
 * @returns {Promise<{mended: number, missing: number} | null>}
 */
export const checkText = () => ask("CHECK");

/** @param {"STATE" | "CHECK"} type */
async function ask(type) {
  const active = (await navigator.serviceWorker?.getRegistration(ROOT))?.active;
  if (!active) return null;
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = ({ data }) => resolve(data);
    active.postMessage({ type }, [port2]);
  });
}

/**
 * Tells how many files are stored while a version is being stored, and why it was given up.
 * @param {(files: Files) => void} onStored
 * @param {(files: Files & {failed: string}) => void} onFailed
 * @returns {() => void} ends it
 */
export function watchStoring(onStored, onFailed) {
  const ended = new AbortController();
  /** @type {BroadcastChannel} */
  let news;
  const listen = () => {
    news = new BroadcastChannel(TEXT_STORE);
    news.onmessage = ({ data }) => ("failed" in data ? onFailed(data) : onStored(data));
  };
  // A message to a page that was left would cost its place behind "back".
  window.addEventListener("pagehide", () => news.close(), { signal: ended.signal });
  window.addEventListener("pageshow", ({ persisted }) => persisted && listen(), { signal: ended.signal });
  listen();
  return () => {
    news.close();
    ended.abort();
  };
}
