// How many pixels a picture has by its own header, before anything unpacks them.
//
// PNG: ISO/IEC 15948, IHDR. JPEG: ITU-T T.81, B.2.2, frame header. WebP: RFC 9649.

/** @typedef {{width: number, height: number}} Size */

/** @type {Record<string, (view: DataView) => Size|null>} */
const HEADERS = { "image/png": ofPng, "image/jpeg": ofJpeg, "image/webp": ofWebp };

/**
 * @param {Uint8Array} bytes
 * @param {string} type
 * @returns {Size|null} null where the header does not say it
 */
export function sizeOf(bytes, type) {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  try {
    return HEADERS[type]?.(view) ?? null;
  } catch {
    return null; // it ends before it says so
  }
}

/** @param {DataView} view */
function ofPng(view) {
  return { width: view.getUint32(16), height: view.getUint32(20) };
}

/** @param {DataView} view */
function ofJpeg(view) {
  for (let at = 2; ; ) {
    if (view.getUint8(at) !== 0xff) return null;
    const marker = view.getUint8(at + 1);
    if (isFrame(marker)) return { width: view.getUint16(at + 7), height: view.getUint16(at + 5) };
    if (marker === 0xff) at += 1; // filling
    else if (marker === 0xda || marker === 0xd9) return null; // the picture itself, or its end
    else at += 2 + view.getUint16(at + 2);
  }
}

/** @param {number} marker */
function isFrame(marker) {
  return marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);
}

/** @param {DataView} view */
function ofWebp(view) {
  const kind = String.fromCharCode(...[12, 13, 14, 15].map((at) => view.getUint8(at)));
  if (kind === "VP8X") return { width: 1 + small(view, 24), height: 1 + small(view, 27) };
  if (kind === "VP8 ") return { width: view.getUint16(26, true) & 0x3fff, height: view.getUint16(28, true) & 0x3fff };
  if (kind !== "VP8L") return null;
  const packed = view.getUint32(21, true);
  return { width: 1 + (packed & 0x3fff), height: 1 + ((packed >> 14) & 0x3fff) };
}

/**
 * @param {DataView} view
 * @param {number} at
 */
function small(view, at) {
  return view.getUint16(at, true) + (view.getUint8(at + 2) << 16);
}
