/** Says in words, in the header, what is stored, and stores what is missing. */
import { runtimeState, storeRuntime } from "./runtime-store.js";
import { ROOT } from "./site.js";
import { repairText, textState } from "./text-store.js";
import { watchVersions } from "./updates.js";

/** Time between two looks while the pages are being stored, in ms. */
const LOOK_AGAIN = 400;

/** Time until storing the pages is tried again, in ms. */
const TRY_AGAIN = 60_000;

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

/** Looks until every page and asset is stored; throws where the browser gave up. */
async function waitForText() {
  for (;;) {
    const { stored, wanted } = await textState();
    if (stored === wanted) break;
    say(`Storing the manual: ${stored} of ${wanted} files`);
    const registration = await navigator.serviceWorker.getRegistration(ROOT);
    if (!registration?.installing) await mendText(registration);
    await new Promise((done) => setTimeout(done, LOOK_AGAIN));
  }
  await navigator.serviceWorker.ready;
  announce("text");
  say("Readable offline");
}

/**
 * Nothing is being stored, yet files are missing: one did not arrive as the site's list has it, or
 * the browser cleared one later.
 * @param {ServiceWorkerRegistration | undefined} registration
 */
async function mendText(registration) {
  if (registration?.active) await repairText();
  const { stored, wanted } = await textState();
  if (stored < wanted) throw new Error("some files did not arrive whole");
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
 * No connection, no room, or a site that is not whole: say what is stored nevertheless.
 * @param {unknown} error
 */
async function sayWhatIsThere(error) {
  const text = await textState().catch(() => null);
  const isTextStored = text !== null && text.stored === text.wanted;
  if (error instanceof DOMException && error.name === "QuotaExceededError") {
    const words = "no room on this phone";
    say(isTextStored ? `Readable offline. Calculators not stored: ${words}` : `Not stored: ${words}`);
    return;
  }
  if (isTextStored) say("Readable offline. Calculators not stored: they follow when there is a connection");
  else if (text) say(`Not all stored: ${text.stored} of ${text.wanted} files. It is tried again in a minute`);
  else say("Not stored yet: it needs a connection");
  tryAgain(isTextStored);
}

/**
 * Tries again when the connection comes back; where pages are missing, in a minute at the latest.
 * @param {boolean} isTextStored
 */
function tryAgain(isTextStored) {
  const tried = new AbortController();
  const again = async () => {
    tried.abort();
    if (isTextStored || (await watch())) await store();
  };
  addEventListener("online", again, { signal: tried.signal });
  if (isTextStored) return;
  const timer = setTimeout(again, TRY_AGAIN);
  tried.signal.addEventListener("abort", () => clearTimeout(timer));
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
