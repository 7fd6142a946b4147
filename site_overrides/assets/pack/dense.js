/** What stands in the file as characters, one a byte: src/underhoist/pack/dense.py wrote it. */

/** @typedef {{name: string, text: string, type: string}} Packed */

const MARK = "=".charCodeAt(0);
const SHIFT = 64;

/** The byte of each character, by its number. */
const BYTES = bytesByCharacter();

/**
 * Rejects with a reason in words where the text is not whole.
 * @param {Packed} packed
 * @returns {Promise<Blob>}
 */
export async function unpacked({ name, text, type }) {
  const stream = new Blob([bytesOf(text)]).stream().pipeThrough(new DecompressionStream("gzip"));
  try {
    return await new Response(stream, { headers: { "content-type": type } }).blob();
  } catch {
    throw new Error(`${name} is damaged: this file was not copied whole`);
  }
}

/** @param {string} text */
function bytesOf(text) {
  const bytes = new Uint8Array(text.length);
  let size = 0;
  for (let at = 0; at < text.length; at += 1) {
    const byte = BYTES[text.charCodeAt(at)];
    bytes[size] = byte === MARK ? BYTES[text.charCodeAt((at += 1))] - SHIFT : byte;
    size += 1;
  }
  return bytes.subarray(0, size);
}

function bytesByCharacter() {
  const all = new TextDecoder("windows-1252").decode(Uint8Array.from({ length: 256 }, (_, byte) => byte));
  const bytes = new Uint8Array(0x10000);
  for (let byte = 0; byte < all.length; byte += 1) bytes[all.charCodeAt(byte)] = byte;
  return bytes;
}
