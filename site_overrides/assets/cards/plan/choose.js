// What comes onto a card with the procedures that were chosen, and where each has its place.

import { isFor } from "./order.js";

/** @import { Index, Job, ProcedureEntry } from "../types.js" */

/**
 * @typedef {object} Choice
 * @property {ProcedureEntry[]} list what comes onto the card, in the order of the work
 * @property {Map<string, string[]>} along ids of what others bring along, with the titles of those
 * @property {{title: string, by: string[]}[]} missed what was left out though others need it
 */

/**
 * @param {Index} index
 * @param {string} family
 * @param {{chosen: Set<string>, left: Set<string>, onCard: Set<string>}} sets ids of what was
 *   chosen, what was left out although something brings it along, and what the card has already
 * @returns {Choice}
 */
export function choose(index, family, { chosen, left, onCard }) {
  const fitting = index.procedures.filter((one) => isFor(one, family));
  const byId = new Map(fitting.map((one) => [one.id, one]));
  /** @type {Map<string, string[]>} */
  const bringers = new Map();
  for (const bringer of fitting.filter(({ id }) => chosen.has(id) && !onCard.has(id))) {
    for (const id of bringer.with.filter((one) => byId.has(one) && !chosen.has(one) && !onCard.has(one))) {
      bringers.set(id, [...(bringers.get(id) ?? []), bringer.title]);
    }
  }
  const along = new Map([...bringers].filter(([id]) => !left.has(id)));
  const missed = [...bringers].filter(([id]) => left.has(id));
  const list = fitting.filter(({ id }) => !onCard.has(id) && (chosen.has(id) || along.has(id)));
  return {
    list: list.sort((a, b) => a.rank - b.rank),
    along,
    missed: missed.map(([id, by]) => ({ title: byId.get(id)?.title ?? id, by })),
  };
}

/**
 * Places among the jobs of a card, so that each new procedure stands before the first job that comes
 * after it in the order of the work, and behind all where none does.
 *
 * @param {Pick<Job, "place"|"text">[]} jobs in their places
 * @param {ProcedureEntry[]} list in the order of the work
 * @param {Index} index
 * @returns {number[]} one a procedure of the list
 */
export function placesFor(jobs, list, index) {
  const rank = new Map(index.procedures.map((one) => [one.id, one.rank]));
  const standing = jobs.map(({ place, text }) => ({ place, rank: rank.get(text.id) ?? Infinity }));
  return list.map((one) => {
    const next = standing.findIndex((other) => other.rank > one.rank);
    const at = next < 0 ? standing.length : next;
    const before = standing[at - 1]?.place ?? 0;
    const place = at < standing.length ? (before + standing[at].place) / 2 : before + 1;
    standing.splice(at, 0, { place, rank: one.rank });
    return place;
  });
}

/**
 * Where a card's procedures ask for others of the manual only by their order: often done with them.
 *
 * @param {Index} index
 * @param {string} family
 * @param {ProcedureEntry[]} list
 * @returns {ProcedureEntry[]}
 */
export function oftenWith(index, family, list) {
  const inList = new Set(list.map(({ id }) => id));
  const near = new Set(list.flatMap(({ before, after }) => [...before, ...after]));
  return index.procedures.filter(({ id, family: own }) => near.has(id) && !inList.has(id) && isFor({ family: own }, family));
}

/**
 * "3 h 25 min" of minutes.
 *
 * @param {number} minutes
 */
export function timeInWords(minutes) {
  const [hours, rest] = [Math.floor(minutes / 60), minutes % 60];
  return [hours > 0 && `${hours} h`, (rest > 0 || hours === 0) && `${rest} min`].filter(Boolean).join(" ");
}
