// Numbers as people write them on a card: 12, 0.5, 1 1/2, 3/4.

const DECIMAL = /^[-−]?\d+(\.\d+)?$/;
const FRACTION = /^([-−]?)(?:(\d+) )?(\d+)\/(\d+)$/;

/** Characters that a number read in a workshop may have; hundreds of digits would be no number any more. */
const LONGEST = 20;

/**
 * Reads a typed number, or says what is wrong with it and what would be right.
 *
 * @param {string} typed
 * @returns {{number: number} | {wrong: string}}
 */
export function readNumber(typed) {
  const text = typed.trim().replace(/\s+/g, " ");
  if (text === "") return { wrong: "Nothing is entered. Enter the number that you read." };
  if (/^[-−]?\d+,\d+$/.test(text)) {
    return { wrong: `“${text}” has a comma. Write ${text.replace(",", ".")}.` };
  }
  if (text.length > LONGEST) return { wrong: `“${text.slice(0, LONGEST)}…” is too long for a number that was read.` };
  if (DECIMAL.test(text)) return { number: Number(text.replace("−", "-")) };
  const parts = FRACTION.exec(text);
  if (!parts || Number(parts[4]) === 0) {
    return { wrong: `“${text}” is not a number. Write it like 12, 0.5 or 1 1/2.` };
  }
  const size = Number(parts[2] ?? 0) + Number(parts[3]) / Number(parts[4]);
  return { number: parts[1] ? -size : size };
}

/**
 * Whether a number lies outside its limits; a hair's breadth of rounding does not count.
 *
 * @param {number} number
 * @param {{low: number|null, high: number|null}} limits
 */
export function isOutside(number, { low, high }) {
  const hair = 1e-9 * Math.max(Math.abs(number), Math.abs(low ?? 0), Math.abs(high ?? 0), 1);
  return (low !== null && number < low - hair) || (high !== null && number > high + hair);
}
