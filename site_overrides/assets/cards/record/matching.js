// Which steps of a newer text are still the same as before.

/** @import { StepText } from "../types.js" */

/**
 * For every step of the newer text the position of the same step in the earlier one, or -1. Steps keep
 * their order; one that only moved is found where its words stand but once on both sides. Of two steps
 * with the same words none is guessed.
 *
 * @param {StepText[]} earlier
 * @param {StepText[]} newer
 * @returns {number[]}
 */
export function matchSteps(earlier, newer) {
  const [before, now] = [earlier.map(said), newer.map(said)];
  const found = inSameOrder(before, now);
  const left = before.map((words, at) => (found.includes(at) ? null : words));
  return found.map((at, place) => {
    if (at >= 0) return at;
    const again = now.filter((words, other) => found[other] < 0 && words === now[place]);
    const places = left.flatMap((words, other) => (words === now[place] ? [other] : []));
    return again.length === 1 && places.length === 1 ? places[0] : -1;
  });
}

/**
 * What a step asks for: its words without their markup, its torques and its readings with their limits.
 *
 * @param {StepText} step
 */
function said({ html, torques, readings }) {
  const words = html.replace(/<[^>]*>/g, " ").replace(/\s+/g, " ").trim();
  const values = torques.map(({ id, value }) => [id, value]);
  const asked = readings.map(({ id, unit, when, low, high }) => [id, unit, when, low, high]);
  return JSON.stringify([words, values, asked]);
}

/**
 * The longest run of the same steps in the same order, by the usual table of common lengths.
 *
 * @param {string[]} before
 * @param {string[]} now
 * @returns {number[]}
 */
function inSameOrder(before, now) {
  const common = Array.from({ length: before.length + 1 }, () => new Array(now.length + 1).fill(0));
  for (let i = before.length - 1; i >= 0; i -= 1) {
    for (let j = now.length - 1; j >= 0; j -= 1) {
      const longer = Math.max(common[i + 1][j], common[i][j + 1]);
      common[i][j] = before[i] === now[j] ? common[i + 1][j + 1] + 1 : longer;
    }
  }
  const found = new Array(now.length).fill(-1);
  for (let i = 0, j = 0; i < before.length && j < now.length; ) {
    if (before[i] === now[j]) found[j++] = i++;
    else if (common[i + 1][j] >= common[i][j + 1]) i += 1;
    else j += 1;
  }
  return found;
}
