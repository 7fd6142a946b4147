/** What this phone keeps of a complaint: the family chosen and the results on each family. */

/** @import { FaultData, Given } from "./types.js" */

/** @typedef {Pick<Given, "check" | "result">} Plain */
/** @typedef {{results: Plain[], isStopped: boolean, before: Plain[]}} Finding `before`: what "Begin again" took away */
/** @typedef {Record<string, Finding>} Findings by unit family */

/** @returns {Finding} */
const nothing = () => ({ results: [], isStopped: false, before: [] });

/**
 * Reads what was kept. What the manual no longer has is left out: a check that is gone tells nothing.
 *
 * @param {unknown} kept
 * @param {FaultData} data
 * @returns {Findings}
 */
export function readFindings(kept, data) {
  const all = /** @type {Record<string, Partial<Finding>>} */ (isRecord(kept) ? kept : {});
  return Object.fromEntries(
    data.families.map(({ id }) => {
      const known = data.by_family[id]?.checks ?? {};
      const of = (/** @type {unknown} */ list) => plainResults(list).filter(({ check }) => check in known);
      const found = isRecord(all[id]) ? all[id] : {};
      const finding = { results: of(found.results), isStopped: found.isStopped === true, before: of(found.before) };
      return [id, finding];
    }),
  );
}

/**
 * Which family to begin with: the one used last, where the complaint knows it.
 *
 * @param {unknown} last
 * @param {FaultData} data
 */
export function familyToBegin(last, data) {
  return data.families.find(({ id }) => id === last)?.id ?? data.families[0]?.id ?? "";
}

/**
 * @param {Finding} finding
 * @param {Plain} given a new result goes before an older one of the same check
 * @returns {Finding}
 */
export function withResult({ results }, given) {
  const others = results.filter(({ check }) => check !== given.check);
  return { ...nothing(), results: [...others, { check: given.check, result: given.result }] };
}

/**
 * @param {Finding} finding
 * @param {string} check
 * @returns {Finding}
 */
export function withoutResult(finding, check) {
  return { ...finding, isStopped: false, results: finding.results.filter((each) => each.check !== check) };
}

/**
 * Everything taken away, so that the next vehicle can be begun, and kept until its first result.
 *
 * @param {Finding} finding
 * @returns {Finding}
 */
export const begunAgain = ({ results }) => ({ ...nothing(), before: results });

/**
 * @param {Finding} finding
 * @returns {Finding}
 */
export const broughtBack = ({ before }) => ({ ...nothing(), results: before });

/**
 * @param {unknown} list
 * @returns {Plain[]}
 */
function plainResults(list) {
  const seen = new Set();
  return (Array.isArray(list) ? list : []).flatMap((each) => {
    const { check, result } = isRecord(each) ? each : {};
    if (typeof check !== "string" || seen.has(check) || !isResult(result)) return [];
    seen.add(check);
    return [{ check, result }];
  });
}

/**
 * @param {unknown} word
 * @returns {word is import("./types.js").Result}
 */
const isResult = (word) => word === "good" || word === "bad" || word === "not done";

/**
 * @param {unknown} value
 * @returns {value is Record<string, any>}
 */
const isRecord = (value) => typeof value === "object" && value !== null && !Array.isArray(value);
