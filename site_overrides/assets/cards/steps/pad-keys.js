// What a key of the number pad does to an entry.

const FRACTION = /\s?\d+\/\d+$/;

/** The keys that are no digit. */
export const POINT = ".";
export const MINUS = "−";
export const DELETE = "delete";
export const FRACTIONS = ["1/4", "1/2", "3/4"];

/**
 * The entry after a key. A key that would make it no number leaves it as it is.
 *
 * @param {string} entry
 * @param {string} key a digit, a fraction, or one of the above
 */
export function pressed(entry, key) {
  const text = entry.trim();
  if (key === DELETE) return FRACTION.test(text) ? text.replace(FRACTION, "") : text.slice(0, -1).trim();
  if (key === MINUS) return /^[-−]/.test(text) ? text.slice(1) : MINUS + text;
  if (FRACTIONS.includes(key)) return `${wholePart(text)} ${key}`.trim().replace(/^([-−]) /, "$1");
  if (FRACTION.test(text)) return text;
  if (key !== POINT) return text + key;
  if (text.includes(POINT)) return text;
  return /\d$/.test(text) ? `${text}.` : `${text}0.`;
}

/**
 * Whether a reading within these limits can be below nought.
 *
 * @param {{low: number|null, high: number|null}} limits
 */
export function mayBeNegative({ low, high }) {
  return (low ?? 0) < 0 || (high ?? 0) < 0;
}

/** @param {string} text */
function wholePart(text) {
  const whole = /^[-−]?\d*/.exec(text.replace(FRACTION, ""))?.[0] ?? "";
  return /^[-−]?0+$/.test(whole) ? whole.replace(/0+$/, "") : whole;
}
