// Plain data of bounded depth and size, without the keys that could reach a program's own parts.

import { Refusal } from "./refusal.js";

const DEEPEST = 16; // an event's procedure's part's variant's measure lies 10 deep
const MOST = 2_000_000; // values; a card of 2,000 events has some hundred thousand
const LONGEST = 100_000; // characters of one text, pictures aside
const NEVER = new Set(["__proto__", "constructor", "prototype"]);

/**
 * @param {unknown} value
 * @param {string} where
 */
export function checkPlain(value, where) {
  let left = MOST;
  /** @param {unknown} part @param {number} depth */
  const look = (part, depth) => {
    if ((left -= 1) < 0) throw new Refusal(where, "It holds more than any card does.");
    if (typeof part === "string" && part.length > LONGEST) {
      throw new Refusal(where, `A text in it is longer than ${LONGEST} characters.`);
    }
    if (typeof part !== "object" || part === null) return;
    if (depth > DEEPEST) throw new Refusal(where, "It is nested deeper than any card is.");
    for (const key of Object.keys(part)) {
      if (NEVER.has(key)) throw new Refusal(where, `It has a key that no card has: “${key}”.`);
      look(/** @type {Record<string, unknown>} */ (part)[key], depth + 1);
    }
  };
  look(value, 0);
}
