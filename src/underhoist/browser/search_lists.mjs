// Packs what the index counted into bytes: a phone reads them as they are, without building a map of every place.
// Each term's list stands by itself, so that a changed step leaves most of the file as it was: an update is small.
import { Reader, Writer } from "./search_numbers.mjs";

/** @typedef {import("../../../site_overrides/assets/search/lists.js").Packed} Packed */
/** @typedef {number} Held A place and how often it holds a term, in one number: there are a million of them. */

/** More often than this no place holds a term: a page would have to be larger than a page may be. */
const MOST = 2 ** 24;

/**
 * @param {number} place
 * @param {number} times
 * @returns {Held}
 */
export const heldAt = (place, times) => place * MOST + times;

/**
 * @param {import("minisearch").AsPlainObject} counted
 * @returns {Packed}
 */
export function packed({ index, fieldIds, fieldLength, averageFieldLength, documentCount }) {
  const fields = Object.values(fieldIds);
  const lists = index.map(([term, held]) => [term, textOf(fields.map((field) => placesOf(held[field] ?? {})))]);
  const lengths = Array.from({ length: documentCount }, (_, place) => fields.map((field) => fieldLength[place]?.[field] ?? 0));
  const average = fields.map((field) => averageFieldLength[field] ?? 0);
  return written(/** @type {[string, string][]} */ (lists), lengths, average);
}

/**
 * @param {[string, string][]} lists Each term with its list as text, in any order.
 * @param {number[][]} lengths By place and field.
 * @param {number[]} average
 * @returns {Packed}
 */
export function written(lists, lengths, average) {
  const ordered = lists.toSorted(([a], [b]) => (a < b ? -1 : 1));
  const numbers = new Writer();
  for (const length of lengths.flat()) numbers.put(length);
  return {
    places: lengths.length,
    average,
    terms: ordered.map(([term]) => term).join(" "),
    lists: ordered.map(([, text]) => text).join(" "),
    lengths: numbers.text,
  };
}

/**
 * @param {Record<string, number>} counted
 * @returns {Held[]}
 */
const placesOf = (counted) => Object.entries(counted).map(([place, times]) => heldAt(Number(place), times));

/**
 * First how many places hold the term in each field, then the places field by field: how far on the next place is,
 * doubled, with one more where how often it is held there follows.
 * @param {Held[][]} fields Each in any order; one that is in order already need not be sorted.
 */
export function textOf(fields) {
  const numbers = new Writer();
  for (const { length } of fields) numbers.put(length);
  for (const held of fields) {
    let last = 0;
    for (const each of isInOrder(held) ? held : new Float64Array(held).sort()) {
      const place = Math.floor(each / MOST);
      const times = each % MOST;
      numbers.put(2 * (place - last) + Number(times > 1));
      if (times > 1) numbers.put(times);
      last = place;
    }
  }
  return numbers.text;
}

/** @param {Held[]} held */
function isInOrder(held) {
  for (let at = 1; at < held.length; at++) if ((held[at - 1] ?? 0) > (held[at] ?? 0)) return false;
  return true;
}

/**
 * Goes through what `textOf` made, field by field. By the ten thousand at a time: nothing is made of them here.
 * @param {string} text
 * @param {number} count How many fields there are.
 * @param {(field: number, place: number, times: number) => void} take
 */
export function eachPlace(text, count, take) {
  const numbers = new Reader(text);
  const sizes = Array.from({ length: count }, () => numbers.next());
  for (const [field, size] of sizes.entries()) {
    for (let left = size, place = 0; left > 0; left--) {
      const step = numbers.next();
      place += step >> 1;
      take(field, place, step & 1 ? numbers.next() : 1);
    }
  }
}

/**
 * The lengths of all fields, place after place.
 * @param {Packed} file
 */
export function lengthsOf({ lengths }) {
  const numbers = new Reader(lengths);
  const all = [];
  while (!numbers.isAtEnd) all.push(numbers.next());
  return all;
}
