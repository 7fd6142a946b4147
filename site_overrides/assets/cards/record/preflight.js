// Before work starts: can this phone keep records, and has it promised to?

import { remember, remembered } from "./store.js";
import { StorageTrouble, troubleOf } from "./trouble.js";

const SMALL = 20_000_000; // bytes; a card with its procedures takes some hundred thousand

/**
 * Writes, reads back and asks the browser for its word.
 *
 * @returns {Promise<{stop: string, warn: string}>} sentences, "" where all is well
 */
export async function checkStorage() {
  try {
    if (!("randomUUID" in crypto)) throw new StorageTrouble("insecure");
    const now = Date.now();
    await remember("probe", now);
    if ((await remembered("probe")) !== now) throw new StorageTrouble("lost");
  } catch (error) {
    return { stop: troubleOf(error).message, warn: "" };
  }
  return { stop: "", warn: (await roomWarning()) || (await promiseWarning()) };
}

async function roomWarning() {
  const { quota = Infinity, usage = 0 } = (await navigator.storage?.estimate?.()) ?? {};
  if (quota - usage > SMALL) return "";
  return "The phone has little room left. Delete some photos or films before you start a card.";
}

/** The browser may keep its word or not give it; installed apps get it. */
async function promiseWarning() {
  const phone = /** @type {Navigator & {standalone?: boolean}} */ (navigator);
  if (phone.standalone === false) {
    return "This is a browser tab, and this phone clears a tab’s records after a week without use. Put the manual on the home screen with Share, Add to Home Screen, and work from there.";
  }
  const kept = await navigator.storage?.persisted?.();
  if (kept || (await navigator.storage?.persist?.())) return "";
  return "This browser has not promised to keep records. Install the manual on the home screen, do not work in a private window, and print each card when it is done.";
}
