// Gives a file to whoever holds the phone, by its share sheet or as a download. Neither needs a network.

import { el } from "./dom.js";

/**
 * Whether this browser has a share sheet that takes such a file.
 *
 * @param {File} file
 */
export function canShare(file) {
  return navigator.canShare?.({ files: [file] }) ?? false;
}

/**
 * Opens the share sheet. False where the person sent it away again.
 *
 * @param {File} file
 * @returns {Promise<boolean>}
 * @throws {DOMException} where the browser refuses
 */
export async function share(file) {
  try {
    await navigator.share({ files: [file], title: file.name });
    return true;
  } catch (error) {
    if (error instanceof DOMException && error.name === "AbortError") return false;
    throw error;
  }
}

/**
 * Puts the file among the downloads.
 *
 * @param {File} file
 */
export function save(file) {
  const address = URL.createObjectURL(file);
  el("a", { href: address, download: file.name }).click();
  setTimeout(() => URL.revokeObjectURL(address), 60_000); // a slow phone reads it a while after the tap
}

/**
 * A file's name out of words that may hold anything.
 *
 * @param {string} words
 */
export function fileName(words) {
  const letters = words.normalize("NFKD").replace(/\p{M}+/gu, "");
  const plain = letters.replace(/[^\p{L}\p{N}]+/gu, "-").replace(/^-+|-+$/g, "");
  return plain.toLowerCase().slice(0, 60) || "card";
}
