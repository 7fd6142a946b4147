// The card's file in a shape that this phone's share sheet takes.

import { canShare } from "../kit/hand-over.js";

/**
 * The file, or null where the share sheet takes none. Some browsers share a file of text and refuse the
 * same file as JSON.
 *
 * @param {string} name without its ending
 * @param {string} text
 * @returns {File|null}
 */
export function shareable(name, text) {
  return [cardFile(name, text), new File([text], `${name}.txt`, { type: "text/plain" })].find(canShare) ?? null;
}

/**
 * @param {string} name without its ending
 * @param {string} text
 */
export function cardFile(name, text) {
  return new File([text], `${name}.json`, { type: "application/json" });
}
