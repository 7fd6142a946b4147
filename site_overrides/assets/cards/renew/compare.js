// Two texts of one procedure beside each other: what a person at work must know of the difference.

import { matchSteps } from "../record/matching.js";

/** @import { ProcedureText, StepText } from "../types.js" */

/** @typedef {{kind: "same"|"changed"|"new"|"gone", earlier: StepText|null, newer: StepText|null}} StepPair */

/**
 * Step by step, in the order of the newer text; what is gone stands where it stood.
 *
 * @param {StepText[]} earlier
 * @param {StepText[]} newer
 * @returns {StepPair[]}
 */
export function pairSteps(earlier, newer) {
  const same = matchSteps(earlier, newer);
  const left = earlier.filter((_step, at) => !same.includes(at));
  /** @type {StepPair[]} */
  const pairs = [];
  newer.forEach((step, at) => {
    if (same[at] >= 0) {
      pairs.push(...goneBefore(left, same[at], earlier), { kind: "same", earlier: earlier[same[at]], newer: step });
      return;
    }
    const end = same.slice(at).find((place) => place >= 0) ?? earlier.length;
    const isNext = left.length > 0 && earlier.indexOf(left[0]) < end;
    const partner = isNext ? (left.shift() ?? null) : null;
    pairs.push({ kind: partner ? "changed" : "new", earlier: partner, newer: step });
  });
  return [...pairs, ...goneBefore(left, earlier.length, earlier)];
}

/**
 * Takes off the list, as gone, what stood before a place of the earlier text.
 *
 * @param {StepText[]} left
 * @param {number} place
 * @param {StepText[]} earlier
 * @returns {StepPair[]}
 */
function goneBefore(left, place, earlier) {
  const gone = left.filter((step) => earlier.indexOf(step) < place);
  left.splice(0, gone.length);
  return gone.map((step) => ({ kind: "gone", earlier: step, newer: null }));
}

/**
 * Torques whose value is another one, each told with the units written out.
 *
 * @param {ProcedureText} earlier
 * @param {ProcedureText} newer
 * @returns {{name: string, words: string}[]}
 */
export function torqueChanges(earlier, newer) {
  const before = new Map(earlier.steps.flatMap(({ torques }) => torques).map(({ id, value }) => [id, value]));
  const now = new Map(newer.steps.flatMap(({ torques }) => torques).map((torque) => [torque.id, torque]));
  return [...now.values()].flatMap(({ id, name, value }) => {
    const was = before.get(id);
    if (was === value) return [];
    return [{ name, words: was ? `${name}: now ${value}, it was ${was}.` : `${name}: new, ${value}.` }];
  });
}

/**
 * Everything else that differs, from both texts alone: for when nobody wrote down what changed.
 *
 * @param {ProcedureText} earlier
 * @param {ProcedureText} newer
 * @returns {string[]}
 */
export function otherChanges(earlier, newer) {
  const steps = pairSteps(earlier.steps, newer.steps).flatMap(stepWords);
  const lists = [
    ...listWords("Tool", named(earlier.tools), named(newer.tools)),
    ...listWords("Part", named(earlier.parts), named(newer.parts)),
    ...listWords("Consumable", earlier.consumables, newer.consumables),
    ...listWords("Fluid", earlier.fluids, newer.fluids),
    ...listWords("Caution", earlier.cautions.map(cautionWords), newer.cautions.map(cautionWords)),
  ];
  return [...steps, ...lists];
}

/** @param {StepPair} pair @returns {string[]} */
function stepWords({ kind, earlier, newer }) {
  if (kind === "new") return [`Step ${newer?.number} is new: ${newer?.text}`];
  if (kind === "gone") return [`Step ${earlier?.number} of the earlier text is gone: ${earlier?.text}`];
  if (kind === "same") return [];
  return newer?.text === earlier?.text
    ? [`Step ${newer?.number} says something else below its first line: ${newer?.text}`]
    : [`Step ${newer?.number} now says: ${newer?.text}`];
}

/**
 * @param {string} what
 * @param {string[]} earlier
 * @param {string[]} newer
 */
function listWords(what, earlier, newer) {
  const fresh = newer.filter((one) => !earlier.includes(one)).map((one) => `${what} added: ${one}.`);
  const gone = earlier.filter((one) => !newer.includes(one)).map((one) => `${what} no longer listed: ${one}.`);
  return [...fresh, ...gone];
}

/** @param {{name: string}[]} things */
function named(things) {
  return things.map(({ name }) => name);
}

/** @param {{word: string, harm: string}} caution */
function cautionWords({ word, harm }) {
  return `${word.toUpperCase()} ${harm.replace(/\.$/, "")}`;
}
