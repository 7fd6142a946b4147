// When to exchange again: soon after something happened, now and then otherwise, later after a trouble.

/** @import { ExchangeTrouble } from "./trouble.js" */

/** ms after an entry of this phone: several ticks in a row go together. */
export const SOON = 2_000;

/** ms until the server is asked again for what others have sent. */
export const REST = 30_000;

const FIRST = 5_000;
const LONGEST = 300_000;

/**
 * How long to wait after so many troubles in a row, or null where waiting does not help.
 *
 * @param {number} failures 1 or more
 * @param {Pick<ExchangeTrouble, "passes"|"wait">} trouble
 * @param {number} roll from 0 up to 1: phones that failed together do not come back together
 * @returns {number|null} ms
 */
export function pauseAfter(failures, { passes, wait }, roll) {
  if (!passes) return null;
  const grown = Math.min(FIRST * 2 ** (failures - 1), LONGEST);
  return Math.max(wait, grown * (0.5 + roll / 2));
}
