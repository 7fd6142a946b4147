// Small checks of plain data, put together like the data itself. Each refuses with the place and the fault.

import { Refusal, shown } from "./refusal.js";

/** @typedef {(value: unknown, where: string) => void} Check */

/** @typedef {Record<string, unknown>} Group */

/**
 * @param {number} [longest] characters
 * @returns {Check}
 */
export function text(longest = 2000) {
  return (value, where) => {
    if (typeof value !== "string") throw new Refusal(where, `${shown(value)} stands where a text is wanted.`);
    if (value.length > longest) throw new Refusal(where, `The text is longer than ${longest} characters.`);
  };
}

/**
 * @param {RegExp} pattern
 * @param {string} wanted "a UUID"
 * @returns {Check}
 */
export function textLike(pattern, wanted) {
  return (value, where) => {
    if (typeof value === "string" && value.length <= 200 && pattern.test(value)) return;
    throw new Refusal(where, `${shown(value)} stands where ${wanted} is wanted.`);
  };
}

/**
 * @param {number} least
 * @param {number} [most]
 * @returns {Check}
 */
export function whole(least, most = Number.MAX_SAFE_INTEGER / 2) {
  return (value, where) => {
    if (Number.isSafeInteger(value) && Number(value) >= least && Number(value) <= most) return;
    throw new Refusal(where, `${shown(value)} stands where a whole number from ${least} on is wanted.`);
  };
}

/** @type {Check} */
export function number(value, where) {
  if (typeof value !== "number" || !Number.isFinite(value)) {
    throw new Refusal(where, `${shown(value)} stands where a number is wanted.`);
  }
}

/** @type {Check} */
export function yesOrNo(value, where) {
  if (typeof value !== "boolean") throw new Refusal(where, `${shown(value)} stands where true or false is wanted.`);
}

/**
 * @param {readonly unknown[]} choices
 * @returns {Check}
 */
export function oneOf(choices) {
  return (value, where) => {
    if (choices.includes(value)) return;
    throw new Refusal(where, `${shown(value)} is none of ${choices.map(shown).join(", ")}.`);
  };
}

/**
 * @param {Check} check
 * @returns {Check}
 */
export function orNull(check) {
  return (value, where) => {
    if (value !== null) check(value, where);
  };
}

/**
 * @param {Check} check
 * @param {number} [most]
 * @returns {Check}
 */
export function listOf(check, most = 500) {
  return (value, where) => {
    if (!Array.isArray(value)) throw new Refusal(where, `${shown(value)} stands where a list is wanted.`);
    if (value.length > most) throw new Refusal(where, `The list is longer than ${most}.`);
    value.forEach((each, at) => check(each, `${where}, number ${at + 1}`));
  };
}

/**
 * A group that has all of these; what else it has does not matter here.
 *
 * @param {Record<string, Check>} wanted
 * @returns {Check}
 */
export function group(wanted) {
  return (value, where) => {
    if (typeof value !== "object" || value === null || Array.isArray(value)) {
      throw new Refusal(where, `${shown(value)} stands where a group of values is wanted.`);
    }
    for (const [name, check] of Object.entries(wanted)) {
      check(Object.hasOwn(value, name) ? /** @type {Group} */ (value)[name] : undefined, `${where}, ${name}`);
    }
  };
}

/**
 * Lets it be absent.
 *
 * @param {Check} check
 * @returns {Check}
 */
export function maybe(check) {
  return (value, where) => {
    if (value !== undefined) check(value, where);
  };
}
