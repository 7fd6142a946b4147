// Makes a photo small enough to keep: upright, without what the camera wrote into it, as a JPEG.

/** @import { Picture } from "../../types.js" */

const LONGEST = [1600, 1280, 960]; // pixels
const QUALITIES = [0.8, 0.7, 0.6, 0.5];
const TARGET = 300_000; // bytes

/** What a phone's memory holds at once, four bytes each. */
const MOST_PIXELS = 64_000_000;

/** A file is no photo that can be kept; its message says what to do. */
export class PhotoTrouble extends Error {}

/**
 * @typedef {object} Shrunk
 * @property {Picture} picture
 * @property {number} width
 * @property {number} height
 * @property {number} bytes
 * @property {string} sha256
 */

/**
 * @param {File} file as the camera or a folder gave it
 * @returns {Promise<Shrunk>}
 * @throws {PhotoTrouble}
 */
export async function shrink(file) {
  const address = URL.createObjectURL(file);
  try {
    const image = await read(file, address);
    const small = await smallEnough(image);
    const content = await small.blob.arrayBuffer();
    const { width, height } = small;
    const picture = { type: small.blob.type, content };
    return { picture, width, height, bytes: content.byteLength, sha256: await digest(content) };
  } finally {
    URL.revokeObjectURL(address);
  }
}

/**
 * The picture, whose size is known before its pixels take up memory.
 *
 * @param {File} file
 * @param {string} address
 */
async function read(file, address) {
  const image = new Image();
  const loaded = new Promise((done, fail) => {
    image.onload = done;
    image.onerror = fail;
  });
  image.src = address;
  await loaded.catch(() => {
    throw new PhotoTrouble(unreadable(file));
  });
  const { naturalWidth: width, naturalHeight: height } = image;
  if (width * height > MOST_PIXELS) throw new PhotoTrouble(tooLarge(file.name, width * height));
  return image;
}

/** @param {File} file */
function unreadable({ name, type, size }) {
  if (size === 0) return `“${name}” is empty. Take the photo again.`;
  if (/hei[cf]/i.test(type) || /\.hei[cf]$/i.test(name)) {
    return `This browser cannot read HEIC pictures such as “${name}”. Set the camera to take JPEG, or take the photo again from here.`;
  }
  return `“${name}” is not a picture that this browser can read. Choose a photo, or take one.`;
}

/**
 * @param {string} name
 * @param {number} pixels
 */
function tooLarge(name, pixels) {
  const [is, most] = [pixels, MOST_PIXELS].map((count) => Math.round(count / 1e6));
  return `“${name}” has ${is} million pixels; this phone can make up to ${most} million small. Set the camera to a smaller size and take it again.`;
}

/**
 * The best that lies within the target, or else the smallest.
 *
 * @param {HTMLImageElement} image
 */
async function smallEnough(image) {
  let best = null;
  for (const longest of LONGEST) {
    const canvas = drawn(image, longest);
    for (const quality of QUALITIES) {
      const blob = await asJpeg(canvas, quality);
      best = { blob, width: canvas.width, height: canvas.height };
      if (blob.size <= TARGET) return best;
    }
  }
  return /** @type {NonNullable<typeof best>} */ (best);
}

/**
 * Drawn upright: the browser turns it as the camera's mark says, and leaves the mark behind.
 *
 * @param {HTMLImageElement} image
 * @param {number} longest side in pixels
 */
function drawn(image, longest) {
  const { naturalWidth, naturalHeight } = image;
  const scale = Math.min(1, longest / Math.max(naturalWidth, naturalHeight));
  const canvas = document.createElement("canvas");
  canvas.width = Math.max(1, Math.round(naturalWidth * scale));
  canvas.height = Math.max(1, Math.round(naturalHeight * scale));
  const pen = canvas.getContext("2d");
  if (!pen) throw new PhotoTrouble("The phone has no memory left for a photo. Close other windows and try again.");
  pen.fillStyle = "white"; // what is clear in a drawing stays paper
  pen.fillRect(0, 0, canvas.width, canvas.height);
  pen.imageSmoothingQuality = "high";
  pen.drawImage(image, 0, 0, canvas.width, canvas.height);
  return canvas;
}

/**
 * @param {HTMLCanvasElement} canvas
 * @param {number} quality
 * @returns {Promise<Blob>}
 */
function asJpeg(canvas, quality) {
  return new Promise((done, fail) => {
    const give = (/** @type {Blob|null} */ blob) =>
      blob ? done(blob) : fail(new PhotoTrouble("The photo could not be made small. Take it again."));
    canvas.toBlob(give, "image/jpeg", quality);
  });
}

/** @param {ArrayBuffer} content */
async function digest(content) {
  const bytes = new Uint8Array(await crypto.subtle.digest("SHA-256", content));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
}
