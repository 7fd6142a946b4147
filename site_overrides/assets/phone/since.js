/** Since when a version of something is stored, remembered across visits. */
import { ROOT } from "./site.js";

/** @typedef {"text" | "runtime"} Stage */

/** @param {Stage} stage */
const key = (stage) => `underhoist stored ${stage} ${ROOT}`;

/**
 * Remembers that this version was found complete. The first time counts.
 * @param {Stage} stage
 * @param {string} version
 */
export function noteStored(stage, version) {
  if (storedSince(stage, version)) return;
  localStorage.setItem(key(stage), JSON.stringify({ version, at: new Date().toISOString() }));
}

/**
 * When this version was first found complete, or null.
 * @param {Stage} stage
 * @param {string} version
 * @returns {Date | null}
 */
export function storedSince(stage, version) {
  const text = localStorage.getItem(key(stage));
  /** @type {{version: string, at: string} | null} */
  const noted = text ? JSON.parse(text) : null;
  return noted?.version === version ? new Date(noted.at) : null;
}
