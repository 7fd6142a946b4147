/** A memory image is stored without its empty pages; this puts them back. */

/**
 * Reads what the build's sparse.mjs wrote. Throws a RangeError where that does not add up.
 * @param {ArrayBuffer} stored
 * @param {Uint8Array<ArrayBuffer>} [image] where to put it; nothing but noughts
 * @returns {Uint8Array<ArrayBuffer>} the image as it was taken
 */
export function wholeImage(stored, image = new Uint8Array(new Uint32Array(stored, 0, 1)[0] ?? 0)) {
  const end = fillImage(image, (into, at) => into.set(new Uint8Array(stored, at, into.length)));
  if (end !== stored.byteLength) throw new RangeError("the image holds more than its list says");
  return image;
}

/**
 * Fills an image piece by piece.
 * @param {Uint8Array<ArrayBuffer>} image nothing but noughts
 * @param {(into: Uint8Array<ArrayBuffer>, at: number) => void} read from a place in what is stored
 * @returns {number} where what is stored ends
 */
export function fillImage(image, read) {
  const numbers = (/** @type {number} */ count, /** @type {number} */ at) => {
    const bytes = new Uint8Array(4 * count);
    read(bytes, at);
    return new Uint32Array(bytes.buffer);
  };
  const [length = 0, count = 0] = numbers(2, 0);
  if (length !== image.length) throw new RangeError("the image is of another size than its memory");
  const runs = numbers(2 * count, 8);
  let at = 8 + runs.byteLength;
  for (let index = 0; index < runs.length; index += 2) {
    const [start = 0, end = 0] = runs.subarray(index, index + 2);
    read(image.subarray(start, end), at);
    at += end - start;
  }
  return at;
}
