/** A memory image is stored without its empty pages; this puts them back. */

/**
 * Reads what the build's sparse.mjs wrote. Throws a RangeError where that does not add up.
 * @param {ArrayBuffer} stored
 * @returns {Uint8Array<ArrayBuffer>} the image as it was taken
 */
export function wholeImage(stored) {
  const [length = 0, count = 0] = new Uint32Array(stored, 0, 2);
  const runs = new Uint32Array(stored, 8, 2 * count);
  const image = new Uint8Array(length);
  let at = runs.byteOffset + runs.byteLength;
  for (let index = 0; index < runs.length; index += 2) {
    const [start = 0, end = 0] = runs.subarray(index, index + 2);
    image.set(new Uint8Array(stored, at, end - start), start);
    at += end - start;
  }
  if (at !== stored.byteLength) throw new RangeError("the image holds more than its list says");
  return image;
}
