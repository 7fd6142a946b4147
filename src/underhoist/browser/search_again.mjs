// Makes the index out of the one before where most pages are as they were: what was counted of those is taken over, and
// their places are numbered anew. It comes out to the byte as if all had been counted.
import { eachPlace, heldAt, lengthsOf, textOf, written } from "./search_lists.mjs";

/**
 * @typedef {import("../../../site_overrides/assets/search/lists.js").Packed} Packed
 * @typedef {import("minisearch").AsPlainObject} Counted
 * @typedef {import("./search_lists.mjs").Held} Held
 * @typedef {{stays: (number | undefined)[], sizes: number[], before: number[]}} Pages In their new order: the number that
 *   each had before if it is as it was, how many places each has, and how many the pages before had.
 */

/**
 * @param {Packed} old
 * @param {Counted} counted The places of the pages that are new or other than before, in their new order.
 * @param {Pages} pages
 * @param {(field: string, isPage: boolean) => boolean} has Whether a page, or a place on it, has the field.
 * @returns {Packed}
 */
export function merged(old, counted, pages, has) {
  const names = Object.keys(counted.fieldIds);
  const { to, fresh, tops } = numbered(pages);
  const lengths = lengthsIn(old, counted, names.length, to, fresh);
  const average = names.map((name, field) => averageOf(lengths, field, (place) => has(name, tops.has(place))));
  return written(listsOf(old, counted, names, to, fresh), lengths, average);
}

/**
 * Where each old place is now, -1 for nowhere; which places are counted anew; which are the tops of pages.
 * @param {Pages} pages
 */
function numbered({ stays, sizes, before }) {
  /** @type {number[]} */
  const starts = [];
  let at = 0;
  for (const size of before) {
    starts.push(at);
    at += size;
  }
  const to = new Int32Array(at).fill(-1);
  /** @type {number[]} */
  const fresh = [];
  const tops = new Set();
  let place = 0;
  for (const [page, size] of sizes.entries()) {
    tops.add(place);
    const old = stays[page];
    for (let i = 0; i < size; i++, place++) {
      if (old === undefined) fresh.push(place);
      else to[(starts[old] ?? 0) + i] = place;
    }
  }
  return { to, fresh, tops };
}

/**
 * @param {Packed} old @param {Counted} counted @param {number} fields @param {Int32Array} to @param {number[]} fresh
 */
function lengthsIn(old, counted, fields, to, fresh) {
  const before = lengthsOf(old);
  /** @type {number[][]} */
  const lengths = [];
  for (const [place, now] of to.entries()) {
    if (now >= 0) lengths[now] = before.slice(place * fields, (place + 1) * fields);
  }
  for (const [id, place] of fresh.entries()) {
    lengths[place] = Array.from({ length: fields }, (_, field) => counted.fieldLength[id]?.[field] ?? 0);
  }
  return lengths;
}

/**
 * The mean as MiniSearch keeps it, place after place: another way of reckoning would round otherwise.
 * @param {number[][]} lengths @param {number} field @param {(place: number) => boolean} has
 */
function averageOf(lengths, field, has) {
  let average = 0;
  for (const [place, each] of lengths.entries()) {
    if (has(place)) average = (average * place + (each[field] ?? 0)) / (place + 1);
  }
  return average;
}

/**
 * Each term with its list as text.
 * @param {Packed} old @param {Counted} counted @param {string[]} names @param {Int32Array} to @param {number[]} fresh
 * @returns {[string, string][]}
 */
function listsOf(old, counted, names, to, fresh) {
  const added = new Map(counted.index);
  const fields = names.map((name) => counted.fieldIds[name] ?? 0);
  const terms = old.terms.split(" ");
  const known = new Map(old.lists.split(" ").map((text, at) => [terms[at] ?? "", text]));
  for (const term of added.keys()) if (!known.has(term)) known.set(term, "");
  const lists = [...known].map(([term, text]) => {
    const held = added.get(term);
    if (!held && isInPlace(text, names.length, to)) return [term, text];
    const all = text ? moved(text, names.length, to) : names.map(() => []);
    for (const [at, id] of fields.entries()) add(all[at] ?? [], held?.[id] ?? {}, fresh);
    return [term, textOf(all)];
  });
  const nothing = textOf(names.map(() => []));
  return /** @type {[string, string][]} */ (lists.filter(([, text]) => text !== nothing));
}

/**
 * Whether all places of a list are where they were: so it is with nearly every list.
 * @param {string} text @param {number} count @param {Int32Array} to
 */
function isInPlace(text, count, to) {
  let isSame = true;
  eachPlace(text, count, (_, place) => (isSame &&= to[place] === place));
  return isSame;
}

/**
 * The places of a list that stayed, field by field, under their new numbers.
 * @param {string} text @param {number} count @param {Int32Array} to
 */
function moved(text, count, to) {
  /** @type {Held[][]} */
  const fields = Array.from({ length: count }, () => []);
  eachPlace(text, count, (field, place, times) => {
    const now = to[place] ?? -1;
    if (now >= 0) fields[field]?.push(heldAt(now, times));
  });
  return fields;
}

/** @param {Held[]} all @param {Record<string, number>} counted @param {number[]} fresh */
function add(all, counted, fresh) {
  for (const [id, times] of Object.entries(counted)) insert(all, heldAt(fresh[Number(id)] ?? 0, times));
}

/**
 * Puts one where it belongs among many that are in order, as they are unless pages changed places.
 * @param {Held[]} all @param {Held} held
 */
function insert(all, held) {
  let [from, to] = [0, all.length];
  while (from < to) {
    const middle = (from + to) >> 1;
    if ((all[middle] ?? 0) < held) from = middle + 1;
    else to = middle;
  }
  all.splice(from, 0, held);
}
