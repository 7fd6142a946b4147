// The line that says what is off the vehicle while work goes on.

import { stillOff } from "../record/review.js";

/** @import { CardState } from "../types.js" */

const MOST = 4;

/**
 * "Off: pan, propshaft and 2 more.", or "" where nothing is.
 *
 * @param {CardState} card
 */
export function offInWords(card) {
  if (card.closed) return "";
  const things = stillOff(card).map(({ thing }) => thing);
  if (things.length === 0) return "";
  const more = things.length - MOST;
  const named = things.slice(0, more === 1 ? MOST + 1 : MOST).join(", ");
  return more > 1 ? `Off: ${named} and ${more} more.` : `Off: ${named}.`;
}
