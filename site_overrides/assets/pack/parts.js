/** What the calculators run on, as it is written into the file: packed, then in base64. */

/**
 * Takes one part out of the file and unpacks it.
 * @param {string} name
 * @returns {Promise<Blob>}
 */
export async function part(name) {
  const place = document.getElementById(`part-${name}`);
  if (!place) throw new Error(`${name} is missing from this file: it was not copied whole`);
  const packed = await fetch(`data:application/octet-stream;base64,${place.textContent.trim()}`);
  const stream = /** @type {ReadableStream} */ (packed.body).pipeThrough(new DecompressionStream("gzip"));
  return new Response(stream, { headers: { "content-type": place.dataset.type ?? "" } }).blob();
}

/** @returns {string[]} the names of all parts that Python wants */
export function partNames() {
  return [...document.querySelectorAll("script[data-type]")].map(({ id }) => id.replace("part-", ""));
}
