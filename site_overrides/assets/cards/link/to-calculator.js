// From a card to a calculator: what the card knows of the vehicle goes along, and the way back.

/** @import { CardState } from "../types.js" */

/**
 * A calculator's address for a card. Entries that a calculator has no field for do no harm.
 *
 * @param {string} href of the calculator, with what the manual fills in
 * @param {CardState} card
 * @param {number|string} at position of the step in hand, from 1, or `fault/<its id>`
 */
export function calculatorAddress(href, card, at) {
  const address = new URL(href);
  const { tyre, axle } = card.vehicle;
  for (const [name, entry] of Object.entries({ tyre, axle })) {
    if (entry) address.searchParams.set(name, entry);
  }
  address.hash = `card=${card.id}/${at}`;
  return address.href;
}

/**
 * Whether an address is that of a calculator of this manual.
 *
 * @param {string} href
 * @param {URL} root of the site
 */
export function isCalculator(href, root) {
  const folder = new URL("calculators/", root).href;
  return href.startsWith(folder) && href.length > folder.length;
}

/**
 * The card, and the step or the fault finding, that a calculator was opened from, or null. Such a
 * fault finding has the step 0; `back` is the way to either.
 *
 * @param {string} hash
 */
export function cardInHash(hash) {
  const found = /^#card=([0-9a-f-]{36})\/(\d+|fault\/[\w-]+)$/.exec(hash);
  if (!found) return null;
  const [, card, place] = found;
  return { card, at: Number(place) || 0, back: `#card/${card}/${place}` };
}
