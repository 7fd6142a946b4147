// Which procedures a card is offered, and in which order it takes them.

/** @import { FaultEntry, Index, Job, Named, ProcedureEntry } from "../types.js" */

/**
 * Whether something is for a family: it names it, or it is for any.
 *
 * @param {{family: string[]}} thing
 * @param {string} family
 */
export function isFor(thing, family) {
  return thing.family.includes(family) || thing.family.includes("any");
}

/**
 * The procedures for a family: what finds a complaint's cause, what mends it, and all the others.
 *
 * @param {Index} index
 * @param {string} family
 * @param {FaultEntry|undefined} fault
 */
export function offered(index, family, fault) {
  const fitting = index.procedures.filter((one) => isFor(one, family));
  const byId = new Map(fitting.map((one) => [one.id, one]));
  const named = (/** @type {string[]} */ ids) => ids.flatMap((id) => byId.get(id) ?? []);
  const checks = named(fault?.checks ?? []);
  const mends = named(fault?.mends ?? []).filter((one) => !checks.includes(one));
  const others = fitting.filter((one) => !checks.includes(one) && !mends.includes(one));
  return { checks, mends, others };
}

/**
 * The chosen ones so that what must come before another does, otherwise as they were chosen.
 *
 * @param {ProcedureEntry[]} chosen
 * @returns {ProcedureEntry[]}
 */
export function inWorkingOrder(chosen) {
  const byId = new Map(chosen.map((one) => [one.id, one]));
  /** @type {Set<ProcedureEntry>} */
  const ordered = new Set();
  /** @param {ProcedureEntry} one @param {string[]} above */
  const visit = (one, above) => {
    if (above.includes(one.id)) return; // a circle: the check of the manual speaks about it
    for (const id of one.before) {
      const first = byId.get(id);
      if (first) visit(first, [...above, one.id]);
    }
    ordered.add(one);
  };
  for (const one of chosen) visit(one, []);
  return [...ordered];
}

/**
 * What to fetch for the whole card, each thing once.
 *
 * @param {Job[]} jobs
 */
export function fetchList(jobs) {
  const texts = jobs.map((job) => job.text);
  return {
    tools: namesOf(texts.flatMap((text) => text.tools)),
    parts: namesOf(texts.flatMap((text) => text.parts)),
    consumables: [...new Set(texts.flatMap((text) => [...text.consumables, ...text.fluids]))],
    cautions: [...new Map(texts.flatMap((t) => t.cautions).map((one) => [one.id, one])).values()],
  };
}

/** @param {Named[]} things */
function namesOf(things) {
  return [...new Map(things.map((thing) => [thing.id, thing.name])).values()];
}
