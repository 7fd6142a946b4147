// Parts, consumables and fluids of a card: which they are, how much went in, and who has them.

import { fetchList } from "../plan/order.js";
import { standingReadings } from "../record/review.js";
import { amount } from "./fluid-words.js";

/** @import { CardState, FindingState, Job, Mark } from "../types.js" */

/**
 * @typedef {object} PartLine
 * @property {string} thing what the event of fetching it names
 * @property {string} name
 * @property {string} about which look-alike it is and how that was told, how much went in, or ""
 * @property {Mark|null} fetched
 */

/**
 * @param {CardState} card
 * @returns {{parts: PartLine[], consumables: PartLine[], fluids: PartLine[], advised: FindingState[]}}
 */
export function partsList(card) {
  const { parts, consumables } = fetchList(card.jobs);
  const fluids = new Set(card.jobs.flatMap(({ text }) => text.fluids));
  const put = fluidPutIn(card);
  const line = (/** @type {string} */ thing, /** @type {string} */ name, about = "") => {
    return { thing, name, about, fetched: card.fetched.get(thing) ?? null };
  };
  const amountOf = (/** @type {string} */ name) => (put.has(name) ? `${put.get(name)?.join(", ")} put in` : "");
  const unnamed = put.has("") ? [line("", "Fluid of which the card does not say the kind", amountOf(""))] : [];
  return {
    parts: parts.map((part) => line(`part|${part.id}`, part.name, identity(card, part))),
    consumables: consumables.filter(({ id }) => !fluids.has(id)).map(({ id, name }) => line(`consumable|${id}`, name)),
    fluids: [...[...fluids].map((name) => line(`consumable|${name}`, name, amountOf(name))), ...unnamed],
    advised: card.findings.filter(({ decision }) => decision?.decision === "advised"),
  };
}

/**
 * @param {CardState} card
 * @param {{id: string, variants: unknown[]}} part
 */
function identity(card, { id, variants }) {
  if (variants.length === 0) return "";
  const told = card.identified.get(id);
  return told ? `${told.variant} (${told.how})` : "Not identified: it has look-alikes.";
}

/**
 * What was put in by the fluid's name, summed by unit; "" for what the card does not name.
 *
 * @param {CardState} card
 * @returns {Map<string, string[]>}
 */
export function fluidPutIn(card) {
  const all = new Set(card.jobs.flatMap(({ text }) => text.fluids));
  const only = all.size === 1 ? [...all][0] : "";
  /** @type {Map<string, Map<string, number>>} */
  const sums = new Map();
  for (const job of card.jobs) {
    const name = job.text.fluids.length === 1 ? job.text.fluids[0] : only;
    for (const { number, words } of poured(job)) {
      const own = sums.get(name) ?? new Map();
      sums.set(name, own.set(words, (own.get(words) ?? 0) + number));
    }
  }
  return new Map([...sums].map(([name, own]) => [name, [...own].map(([words, number]) => amount(number, words))]));
}

/** @param {Job} job */
function poured(job) {
  return standingReadings(job).flatMap(({ asked, taken }) => {
    const number = asked.fluid === "in" ? (taken?.number ?? null) : null;
    return number === null ? [] : [{ number, words: asked.unit_words }];
  });
}
