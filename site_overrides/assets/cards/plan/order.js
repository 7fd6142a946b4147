// Which procedures a card is offered, and in which order it takes them.

/** @import { FaultEntry, Index, Job } from "../types.js" */

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
 * What to fetch for the whole card, each thing once.
 *
 * @param {Job[]} jobs
 */
export function fetchList(jobs) {
  const texts = jobs.map((job) => job.text);
  const consumables = texts.flatMap((text) => [...text.consumables, ...text.fluids]);
  return {
    tools: byId(texts.flatMap((text) => text.tools)),
    parts: byId(texts.flatMap((text) => text.parts)),
    consumables: [...new Set(consumables)].map((name) => ({ id: name, name })),
    cautions: byId(texts.flatMap((text) => text.cautions)).sort(gravestFirst),
  };
}

/**
 * @template {{id: string}} T
 * @param {T[]} things
 * @returns {T[]} each once
 */
function byId(things) {
  return [...new Map(things.map((thing) => [thing.id, thing])).values()];
}

const GRAVITY = ["danger", "warning", "caution", "notice"];

/**
 * @param {{word: string}} a
 * @param {{word: string}} b
 */
function gravestFirst(a, b) {
  return GRAVITY.indexOf(a.word) - GRAVITY.indexOf(b.word);
}
