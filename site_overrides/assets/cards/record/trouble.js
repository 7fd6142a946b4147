// What can go wrong with the phone's storage, in words that tell what to do about it.

/** @typedef {"insecure"|"missing"|"blocked"|"slow"|"full"|"forgets"|"lost"|"newer"} TroubleCode */

const WORDS = /** @type {Record<TroubleCode, string>} */ ({
  insecure:
    "This page was opened by an address that begins with http, so the browser gives it no safe storage. Open the manual by its https address.",
  missing:
    "This browser does not let the page store anything. A private window or a setting that blocks site data does that. Open the manual in an ordinary window and allow it to store data.",
  blocked:
    "Another window still holds an older version of this page. Close every other window of the manual, then try again.",
  slow: "The phone's storage does not answer. Close the browser, open the manual again and look at this step.",
  full: "The phone has no room left for records. Delete some photos or films, then try again.",
  forgets:
    "The phone's storage took a note and did not give it back. Close the browser and open the manual again; if this comes again, use another phone.",
  lost: "The phone's storage was cut off. Try again. If it goes on, close the browser and open the manual again.",
  newer:
    "The records on this phone were made by a newer version of the manual. Reload this page while there is a signal.",
});

/** Storage does not work; its message says what to do. */
export class StorageTrouble extends Error {
  /**
   * @param {TroubleCode} code
   * @param {unknown} [cause]
   */
  constructor(code, cause) {
    super(WORDS[code], { cause });
    this.name = "StorageTrouble";
    this.code = code;
  }
}

/**
 * The trouble behind an error of the browser.
 *
 * @param {unknown} error
 * @returns {StorageTrouble}
 */
export function troubleOf(error) {
  if (error instanceof StorageTrouble) return error;
  const name = error instanceof Error || error instanceof DOMException ? error.name : "";
  if (name === "QuotaExceededError") return new StorageTrouble("full", error);
  if (name === "SecurityError") return new StorageTrouble("missing", error);
  if (name === "VersionError") return new StorageTrouble("newer", error);
  return new StorageTrouble("lost", error);
}

/**
 * Whether a fresh connection may help: everything but what the person must put right first.
 *
 * @param {StorageTrouble} trouble
 */
export function isWorthRetrying({ code }) {
  return code === "lost" || code === "slow";
}
