/** Says in words, in the header, what is stored, and stores what is missing. */
import { runtimeState, storeRuntime } from "./runtime-store.js";
import { textState } from "./text-store.js";
import { watchVersions } from "./updates.js";

/** Time between two looks while the pages are being stored, in ms. */
const LOOK_AGAIN = 400;

const place = document.querySelector("#offline-state");

/** @param {string} words */
function say(words) {
  if (place && place.textContent !== words) place.textContent = words;
}

/** Stores both stages and reports on them until everything is there. */
export async function keepOffline() {
  if (!("serviceWorker" in navigator && "caches" in globalThis)) {
    say(isSecureContext ? "This browser cannot store the manual" : "Not stored: the address must begin with https");
    return;
  }
  if (!(await watch())) {
    say("Not stored on this phone");
    return;
  }
  await store();
}

/** @returns {Promise<boolean>} whether a service worker stores this site; a preview has none */
async function watch() {
  try {
    await watchVersions(() => storeRuntime(() => {}));
    return true;
  } catch {
    // Without a connection the browser cannot look for a newer version. What is stored still serves.
    return navigator.serviceWorker.controller !== null;
  }
}

async function store() {
  try {
    await waitForText();
    await keepRuntime();
  } catch (error) {
    await sayWhatIsThere(error);
  }
}

/** Looks until every page and asset is stored. */
async function waitForText() {
  for (;;) {
    const { stored, wanted } = await textState();
    if (stored === wanted) break;
    say(`Storing the manual: ${stored} of ${wanted} files`);
    await new Promise((done) => setTimeout(done, LOOK_AGAIN));
  }
  await navigator.serviceWorker.ready;
  announce("text");
  say("Readable offline");
}

async function keepRuntime() {
  const { stored, wanted } = await runtimeState();
  if (stored < wanted) {
    await storeRuntime((bytes) => say(`Readable offline. Storing the calculators: ${megabytes(bytes)}`));
  }
  announce("runtime");
  say("Readable offline. Calculators offline");
}

/**
 * No connection, or no room: say what is stored nevertheless.
 * @param {unknown} error
 */
async function sayWhatIsThere(error) {
  const isFull = error instanceof DOMException && error.name === "QuotaExceededError";
  const why = isFull ? "no room on this phone" : "they follow when there is a connection";
  const text = await textState().catch(() => null);
  if (text && text.stored === text.wanted) say(`Readable offline. Calculators not stored: ${why}`);
  else say(isFull ? "Not stored: no room on this phone" : "Not stored yet: it needs a connection");
  if (!isFull) addEventListener("online", () => void store(), { once: true });
}

/** @param {"text" | "runtime"} stage */
function announce(stage) {
  document.documentElement.dataset[`${stage}Stored`] = "";
  document.dispatchEvent(new CustomEvent("uh-stored", { detail: stage }));
}

/**
 * Whole megabytes: a screen reader says each change.
 * @param {{stored: number, wanted: number}} bytes
 */
function megabytes({ stored, wanted }) {
  return `${Math.floor(stored / 1e6)} of ${Math.ceil(wanted / 1e6)} MB`;
}
