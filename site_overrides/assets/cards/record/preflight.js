// Before work starts: can this phone keep what is made here, and has it promised to?

import { rememberHere, remembered } from "./store.js";
import { StorageTrouble, troubleOf } from "./trouble.js";

/**
 * Where a value can be put and found again.
 * @typedef {object} Memory
 * @property {(name: string, value: unknown) => Promise<unknown>} remember
 * @property {(name: string) => Promise<unknown>} remembered
 */

/**
 * @typedef {object} Words
 * @property {string} things what is kept
 * @property {string} start what must wait until there is room
 * @property {string} copy how to have one elsewhere
 */

/** @type {Words} */
const CARDS = { things: "records", start: "start a card", copy: "print or share each card when it is done" };

const SMALL = 20_000_000; // bytes; a card with its procedures takes some hundred thousand
const PHOTO = 300_000; // bytes

/**
 * What the phone's storage promises.
 * @typedef {object} StorageWarning
 * @property {string} warn what to mind, "" where all is well
 * @property {boolean} tab whether this is a tab on a phone that clears tabs
 */

/** The same, and why work must not start, "" where it may.
 * @typedef {StorageWarning & {stop: string}} StorageWord */

/** @type {Memory} */
const HERE = { remember: rememberHere, remembered };

/**
 * Both that must be known before work starts and what can be told a moment later.
 *
 * @param {Memory} memory
 * @param {Words} words
 * @returns {Promise<StorageWord>}
 */
export async function checkStorage(memory, words) {
  const stop = await whyNot(memory);
  return { stop, ...(stop ? { warn: "", tab: false } : await storageWarning(memory, words)) };
}

/**
 * Writes and reads back: why work must not start here, "" where it may.
 *
 * @param {Memory} [memory]
 */
export async function whyNot(memory = HERE) {
  try {
    if (!("randomUUID" in crypto)) throw new StorageTrouble("insecure");
    const now = Date.now();
    await memory.remember("probe", now);
    if ((await memory.remembered("probe")) !== now) throw new StorageTrouble("forgets");
    return "";
  } catch (error) {
    return troubleOf(error).message;
  }
}

/**
 * Asks how much room there is and for the browser's word.
 *
 * @param {Memory} [memory]
 * @param {Words} [words]
 * @returns {Promise<StorageWarning>}
 */
export async function storageWarning(memory = HERE, words = CARDS) {
  const warn = (await roomWarning(memory, words)) || (await promiseWarning(words));
  return { warn, tab: isClearedTab() };
}

/**
 * Browsers tell less and less of how much room there is, so something of a photo's size is put away and
 * taken back.
 *
 * @param {Memory} memory
 * @param {Words} words
 */
async function roomWarning(memory, { start }) {
  const { quota = Infinity, usage = 0 } = (await navigator.storage?.estimate?.()) ?? {};
  const fits = quota - usage > SMALL && (await holds(memory, new Uint8Array(PHOTO)));
  return fits ? "" : `The phone has little room left. Delete some photos or films before you ${start}.`;
}

/**
 * @param {Memory} memory
 * @param {unknown} value
 */
async function holds(memory, value) {
  try {
    await memory.remember("room", value);
    await memory.remember("room", 0);
    return true;
  } catch {
    return false;
  }
}

/**
 * The browser may keep its word or not give it; installed apps get it.
 *
 * @param {Words} words
 */
async function promiseWarning({ things, copy }) {
  if (isClearedTab()) {
    return `This is a browser tab, and this phone clears a tab’s ${things} after a week without use. Put the manual on the home screen with Share, Add to Home Screen, and work from there.`;
  }
  const kept = await navigator.storage?.persisted?.();
  if (kept || (await navigator.storage?.persist?.())) return "";
  return `This browser has not promised to keep ${things}. Install the manual on the home screen, do not work in a private window, and ${copy}.`;
}

/** Whether this phone has home-screen apps of its own kind and this page is none of them. */
function isClearedTab() {
  return /** @type {Navigator & {standalone?: boolean}} */ (navigator).standalone === false;
}
