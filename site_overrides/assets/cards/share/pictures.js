// Pictures as text in a file, and back: each is what its event says, and a picture at all.

import { sizeOf } from "./picture-size.js";
import { Refusal } from "./refusal.js";

/** @import { CardEvent, Picture } from "../types.js" */

/** How the files of each type begin: JPEG, PNG and WebP by their own specifications. */
const BEGINNINGS = /** @type {Record<string, (bytes: Uint8Array) => boolean>} */ ({
  "image/jpeg": (bytes) => begins(bytes, 0, [0xff, 0xd8, 0xff]),
  "image/png": (bytes) => begins(bytes, 0, [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
  "image/webp": (bytes) => begins(bytes, 0, [0x52, 0x49, 0x46, 0x46]) && begins(bytes, 8, [0x57, 0x45, 0x42, 0x50]),
});

const MOST_PIXELS = 16_000_000; // a phone keeps its own photos at a sixth of that

const PIECE = 0x6000; // bytes at once, a multiple of 3, so that the pieces join without padding between

/**
 * @param {ArrayBuffer} content
 * @returns {string} base64
 */
export function toText(content) {
  const bytes = new Uint8Array(content);
  let made = "";
  for (let at = 0; at < bytes.length; at += PIECE) {
    made += btoa(String.fromCharCode(...bytes.subarray(at, at + PIECE)));
  }
  return made;
}

/**
 * The picture of a photo's event.
 *
 * @param {string} base64
 * @param {CardEvent} event
 * @param {string} where
 * @returns {Promise<Picture>}
 */
export async function toPicture(base64, event, where) {
  const { type, bytes, sha256 } = /** @type {{type: string, bytes: number, sha256: string}} */ (event.value);
  const looks = Object.hasOwn(BEGINNINGS, type) ? BEGINNINGS[type] : null;
  if (!looks) throw new Refusal(where, `A picture of type “${type}” is not taken in: JPEG, PNG and WebP are.`);
  const content = bytesOf(base64, where);
  if (!looks(content)) throw new Refusal(where, `It is no picture of type “${type}”.`);
  refuseHuge(content, type, where);
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", content));
  const hash = Array.from(digest, (byte) => byte.toString(16).padStart(2, "0")).join("");
  if (content.length !== bytes || hash !== sha256) {
    throw new Refusal(where, "It is not the picture that was taken: its size or its hash does not fit. Ask for the file again.");
  }
  return { type, content: content.buffer };
}

/**
 * A few kilobytes can unpack to more pixels than a phone's memory holds.
 *
 * @param {Uint8Array} content
 * @param {string} type
 * @param {string} where
 */
function refuseHuge(content, type, where) {
  const size = sizeOf(content, type);
  if (!size) throw new Refusal(where, "Its beginning does not say how large the picture is.");
  const [is, most] = [size.width * size.height, MOST_PIXELS].map((count) => Math.ceil(count / 1e6));
  if (is > most) throw new Refusal(where, `It has ${is} million pixels. A card’s photo has ${most} million at most.`);
}

/**
 * @param {string} base64
 * @param {string} where
 */
function bytesOf(base64, where) {
  try {
    return Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
  } catch {
    throw new Refusal(where, "Its text is no base64.");
  }
}

/**
 * @param {Uint8Array} bytes
 * @param {number} at
 * @param {number[]} wanted
 */
function begins(bytes, at, wanted) {
  return wanted.every((byte, index) => bytes[at + index] === byte);
}
