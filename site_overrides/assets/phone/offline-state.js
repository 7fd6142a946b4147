/** Says in words, in the header, what is stored, and has stored what is missing. */
import { dailyCheck } from "./daily-check.js";
import { keeper } from "./keeper.js";
import { noteStored } from "./since.js";
import { ROOT } from "./site.js";
import { textState, watchStoring } from "./text-store.js";
import { watchVersions } from "./updates.js";

/** Time until storing the pages is tried again, in ms. */
const TRY_AGAIN = 60_000;

/** Name of the error of a phone without room. */
const FULL = "QuotaExceededError";

const place = document.querySelector("#offline-state");

/** Said last, and what is said after it. */
let said = "";
let after = "";

/** @param {string} words */
function say(words) {
  said = words;
  if (place && place.textContent !== words + after) place.textContent = words + after;
}

/** Stores both stages and reports on them until everything is there. */
export async function keepOffline() {
  if (!("serviceWorker" in navigator && "caches" in globalThis)) {
    say(isSecureContext ? "This browser cannot store the manual" : "Not stored: the address must begin with https");
    return;
  }
  watching ??= watchStoring(sayStored, sayGivenUp);
  await store();
}

/** @type {(() => void) | undefined} */
let watching;

/** Files of the pages and assets as far as they are known to be stored. */
let files = { stored: 0, wanted: 0 };
/** Why storing them was given up, by the error's name. */
let reason = "";
/** Whether a first version is being waited for: what was under way still arrives after it was given up. */
let isAwaited = false;

/** @param {import("./text-store.js").Files} now */
function sayStored(now) {
  files = now;
  if (!isAwaited) return;
  say(`Storing the manual: ${now.stored} of ${now.wanted} files`);
  tell("uh-storing", { stage: "text", words: `Being stored: ${now.stored} of ${now.wanted} files` });
}

/** @param {import("./text-store.js").Files & {failed: string}} given */
function sayGivenUp({ failed, ...now }) {
  files = now;
  reason = failed;
  // A first version that does not fit is said where storing ends; a newer one would be missed in silence.
  if (failed !== FULL || !("textStored" in document.documentElement.dataset)) return;
  after = ". A newer version was not stored: no room on this phone";
  say(said);
}

async function store() {
  const registration = await watch();
  if (!registration) {
    say("Not stored on this phone");
    return;
  }
  if (!(await textIsStored(registration))) {
    sayTextIsMissing();
    return;
  }
  announce("text");
  say("Readable offline");
  await keepRuntime();
}

/** @returns {Promise<ServiceWorkerRegistration | undefined>} none where the site has no service worker: a preview */
async function watch() {
  try {
    return await watchVersions();
  } catch {
    // Without a connection the browser cannot look for a newer version. What is stored still serves.
    return navigator.serviceWorker.getRegistration(ROOT);
  }
}

/**
 * Waits until the first version is stored, or is given up.
 * @param {ServiceWorkerRegistration} registration
 */
async function textIsStored(registration) {
  const first = registration.active ? null : (registration.installing ?? registration.waiting);
  const isDone = () => !first || /activated|redundant/.test(first.state);
  isAwaited = !isDone();
  if (isAwaited) await new Promise((done) => first?.addEventListener("statechange", () => isDone() && done(null)));
  isAwaited = false;
  return (await textState())?.isWhole ?? false;
}

function sayTextIsMissing() {
  if (reason === FULL) say("Not stored: no room on this phone");
  else if (files.wanted) say(`Not all stored: ${files.stored} of ${files.wanted} files. It is tried again in a minute`);
  else say("Not stored yet: it needs a connection");
  tell("uh-stored", "nothing");
  tryAgain(TRY_AGAIN);
}

async function keepRuntime() {
  try {
    const { version } = await keeper("store", sayKept);
    noteStored("runtime", version);
    announce("runtime");
    say("Readable offline. Calculators offline");
    await dailyCheck();
  } catch (error) {
    const isFull = error instanceof Error && error.name === FULL;
    const why = isFull ? "no room on this phone" : "they follow when there is a connection";
    say(`Readable offline. Calculators not stored: ${why}`);
    tell("uh-stored", "nothing");
    if (!isFull) tryAgain();
  }
}

/** @param {import("./runtime-store.js").Bytes} bytes */
function sayKept(bytes) {
  say(`Readable offline. Calculators: ${megabytes(bytes)}`);
  tell("uh-storing", { stage: "runtime", words: `Being stored: ${megabytes(bytes)}` });
}

/**
 * Tries again when the connection comes back, or after a time.
 * @param {number} [after] in ms
 */
function tryAgain(after) {
  const tried = new AbortController();
  const again = () => {
    tried.abort();
    void keepOffline();
  };
  addEventListener("online", again, { signal: tried.signal });
  if (!after) return;
  const timer = setTimeout(again, after);
  tried.signal.addEventListener("abort", () => clearTimeout(timer));
}

/** @param {"text" | "runtime"} stage */
function announce(stage) {
  document.documentElement.dataset[`${stage}Stored`] = "";
  tell("uh-stored", stage);
}

/**
 * Tells what else the page holds: how far a stage is, or that something is to be looked at again.
 * @param {"uh-storing" | "uh-stored"} name
 * @param {unknown} detail
 */
const tell = (name, detail) => document.dispatchEvent(new CustomEvent(name, { detail }));

/**
 * Whole megabytes: a screen reader says each change.
 * @param {{stored: number, wanted: number}} bytes
 */
function megabytes({ stored, wanted }) {
  return `${Math.floor(stored / 1e6)} of ${Math.ceil(wanted / 1e6)} MB`;
}
