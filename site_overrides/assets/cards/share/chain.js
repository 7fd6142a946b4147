// Whether events are what they were when they were made, and whether any is missing between them.

import { hashOf } from "../record/canonical.js";
import { Refusal } from "./refusal.js";

/** @import { CardEvent } from "../types.js" */

/** Places of one device's chain, both ends included. @typedef {{device: string, from: number, to: number}} Run */

const AT_ONCE = 200; // hashes under way together

/**
 * Refuses an event whose content is not what its hash says, and one that does not follow from the
 * event at the place before it.
 *
 * @param {CardEvent[]} events
 * @param {(event: CardEvent) => string} where
 */
export async function checkHashes(events, where) {
  for (let from = 0; from < events.length; from += AT_ONCE) {
    const part = events.slice(from, from + AT_ONCE);
    const hashes = await Promise.all(part.map(({ hash: _hash, ...body }) => hashOf(body)));
    const wrong = part.find(({ hash }, at) => hash !== hashes[at]);
    if (wrong) throw new Refusal(where(wrong), "It was changed after it was made: its hash does not fit. Ask for the file again.");
  }
  for (const chain of chains(events)) {
    chain.forEach((event, at) => checkLink(event, chain[at - 1], where(event)));
  }
}

/**
 * @param {CardEvent} event
 * @param {CardEvent|undefined} before the one with the next lower place that is known
 * @param {string} where
 */
function checkLink(event, before, where) {
  if (before?.sequence === event.sequence) {
    throw new Refusal(where, "Another event stands at the same place of its phone’s chain.");
  }
  const first = event.sequence === 1;
  if (first ? event.previous !== "" : event.previous === "") {
    throw new Refusal(where, "Its link to the event before it does not fit its place.");
  }
  if (before && before.sequence === event.sequence - 1 && event.previous !== before.hash) {
    throw new Refusal(where, "It does not follow from the event before it.");
  }
}

/**
 * Places between a device's events that none of these events stands at. They belong to other cards of
 * that device, or what stood there is missing.
 *
 * @param {CardEvent[]} events of one card
 * @returns {Run[]}
 */
export function gaps(events) {
  return chains(events).flatMap((chain) =>
    chain.flatMap(({ device, sequence }, at) => {
      const from = (chain[at - 1]?.sequence ?? 0) + 1;
      return from < sequence ? [{ device, from, to: sequence - 1 }] : [];
    }),
  );
}

/**
 * What of the gaps no run accounts for.
 *
 * @param {Run[]} open
 * @param {Run[]} runs
 * @returns {Run[]}
 */
export function without(open, runs) {
  return runs.reduce((left, run) => left.flatMap((gap) => cut(gap, run)), open);
}

/**
 * @param {Run} gap
 * @param {Run} run
 * @returns {Run[]}
 */
function cut(gap, run) {
  if (gap.device !== run.device || run.to < gap.from || run.from > gap.to) return [gap];
  const before = { ...gap, to: run.from - 1 };
  const after = { ...gap, from: run.to + 1 };
  return [before, after].filter(({ from, to }) => from <= to);
}

/** @param {CardEvent[]} events @returns {CardEvent[][]} by device, in the order of their places */
function chains(events) {
  const devices = [...new Set(events.map(({ device }) => device))].sort();
  const own = (/** @type {string} */ device) => events.filter((event) => event.device === device);
  return devices.map((device) => own(device).sort((a, b) => a.sequence - b.sequence));
}
