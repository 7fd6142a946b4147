// As left against as found, in words.

/** @import { ReadingTaken } from "../types.js" */

const PARTS = 16; // turns are counted in no finer part

/**
 * "0.15 millimetres less than as found", or "" where one of them has no number.
 *
 * @param {Pick<ReadingTaken, "written"|"number">|null} found
 * @param {Pick<ReadingTaken, "written"|"number">|null} left
 * @param {string} unitWords such as "millimetres"
 */
export function differenceWords(found, left, unitWords) {
  if (!found || !left || found.number === null || left.number === null) return "";
  const size = Math.abs(left.number - found.number);
  const way = left.number > found.number ? "more" : "less";
  const fractions = [found, left].some(({ written }) => written.includes("/"));
  const written = (fractions && inFractions(size)) || inDecimals(size, [found.written, left.written]);
  if (Number(written) === 0) return "the same as found";
  const one = written === "1" || /^\d+\/\d+$/.test(written);
  const unit = one && /^\w+s$/.test(unitWords) ? unitWords.slice(0, -1) : unitWords;
  return `${written} ${unit} ${way} than as found`;
}

/**
 * As many decimals as the finer of the two was written with.
 *
 * @param {number} size
 * @param {string[]} written
 */
function inDecimals(size, written) {
  const decimals = Math.max(...written.map((one) => one.split(".")[1]?.length ?? 0));
  const least = written.some((one) => one.includes("/")) ? 3 : decimals;
  return least === 3 ? String(Number(size.toFixed(3))) : size.toFixed(decimals);
}

/**
 * "1 1/4", or "" where it is no such part.
 *
 * @param {number} size
 */
function inFractions(size) {
  const parts = Math.round(size * PARTS);
  if (Math.abs(parts / PARTS - size) > 1e-9) return "";
  const whole = Math.floor(parts / PARTS);
  let [top, bottom] = [parts % PARTS, PARTS];
  while (top > 0 && top % 2 === 0) [top, bottom] = [top / 2, bottom / 2];
  return [whole > 0 || top === 0 ? String(whole) : "", top > 0 ? `${top}/${bottom}` : ""].join(" ").trim();
}
