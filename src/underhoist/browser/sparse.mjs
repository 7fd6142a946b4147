// A memory image without its empty pages. The phone's half is assets/phone/sparse-image.js.

const PAGE = 4096;

/**
 * Returns, as 32-bit little-endian numbers, the length of `image`, how many runs of pages hold
 * anything, and the beginning and end of each run; then what the runs hold.
 */
export function sparse(image) {
  const runs = filledRuns(image);
  const head = Uint32Array.from([image.length, runs.length, ...runs.flat()]);
  return Buffer.concat([new Uint8Array(head.buffer), ...runs.map(([start, end]) => image.subarray(start, end))]);
}

function filledRuns(image) {
  const runs = [];
  for (let start = 0; start < image.length; start += PAGE) {
    const end = Math.min(start + PAGE, image.length);
    if (image.subarray(start, end).every((byte) => byte === 0)) continue;
    if (runs.at(-1)?.[1] === start) runs.at(-1)[1] = end;
    else runs.push([start, end]);
  }
  return runs;
}
