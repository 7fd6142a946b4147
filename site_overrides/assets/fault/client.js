/** Asks where a complaint's search stands; Python answers, in the calculators' thread. */
import { calculators } from "../phone/calculator-client.js";

/** @import { Given, Told } from "./types.js" */

/** So many states are looked into before the order is only nearly the quickest: a slow phone's second. */
export const MOST = 1_000;

/** Starts Python before the first question. */
export const wakeEngine = () => void calculators.start();

/**
 * Rejects with a reason in words where Python did not start or stopped.
 *
 * @param {object} complaint a family's, from `fault/data/`
 * @param {Pick<Given, "check" | "result">[]} results
 * @returns {Promise<Told>}
 */
export function standing(complaint, results) {
  const pairs = results.map(({ check, result }) => /** @type {[string, string]} */ ([check, result]));
  return calculators.put({ complaint, results: pairs, most: mostFor(complaint) });
}

/**
 * With more checks each state takes longer to look into.
 *
 * @param {{checks?: object[]}} complaint
 */
const mostFor = ({ checks = [] }) => Math.round(MOST * Math.min(1, 12 / checks.length) ** 4);
