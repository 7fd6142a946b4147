// How well each place answers a part of a question: BM25+ as MiniSearch has it, on numbers instead of objects,
// so that a word in every step of a large manual costs a phone milliseconds.
import { FIELDS, Lists, numbersOf } from "./lists.js";

/**
 * A term of the manual that answers: its number, how good a match it is, and the bit of the term that was asked for.
 * @typedef {{term: number, weight: number, asked: number}} Match
 * @typedef {Match[][]} Clause What must all be in one place, each in one of its forms.
 */

/** A title tells more than a step, what is to be done more than what explains it: in the order of the fields. */
const BOOST = [8, 6, 2, 1];
const K = 1.2; // how fast saying it again stops to count
const B = 0.7; // how much a long text counts less
const D = 0.5; // what a long text keeps all the same

export class Weigher {
  /** @param {import("./lists.js").Packed} packed */
  constructor(packed) {
    const { places, average, lengths } = packed;
    this.lists = new Lists(packed);
    this.count = places;
    /** How much a place's length dulls its terms, field by field. */
    this.dull = new Float64Array(FIELDS * places);
    numbersOf(lengths).forEach((length, i) => {
      const field = i % FIELDS;
      this.dull[field * places + (i - field) / FIELDS] = K * (1 - B + (B * length) / average[field]);
    });
    /** The weight of each place, for the part that was weighed last; 0 where it does not answer. */
    this.scores = new Float64Array(places);
    this.asked = new Uint32Array(places);
    this.together = new Float64Array(places);
    this.reached = new Uint8Array(places);
    this.looked = 0;
  }

  /**
   * Weighs every place that answers a part of a question in one of the ways.
   * @param {Clause[]} clauses
   * @param {number} most How many entries of the lists may be looked at: the best ways come first.
   * @returns {{terms: number[], cut: boolean}} The terms that were found, and whether some list was too long.
   */
  weigh(clauses, most) {
    this.scores.fill(0);
    this.asked.fill(0);
    /** @type {Set<number>} */
    const terms = new Set();
    const end = this.looked + most;
    let cut = false;
    for (const clause of merged(clauses)) {
      const left = end - this.looked;
      const whole = clause.length === 1 ? this.#one(clause[0][0], left) : this.#all(clause, left, terms);
      if (clause.length === 1) terms.add(clause[0][0].term);
      cut ||= !whole;
    }
    for (let place = 0; place < this.count; place++) this.scores[place] *= bitsOf(this.asked[place]);
    return { terms: [...terms], cut };
  }

  /**
   * Adds what one term gives; false where not all of it could be looked at.
   * @param {Match} match
   * @param {number} most
   */
  #one({ term, weight, asked }, most) {
    const { places } = this.lists;
    const given = this.#given(term, weight, most);
    given.forEach((score, i) => {
      this.scores[places[i]] += score;
      this.asked[places[i]] |= asked;
    });
    return given.length === this.lists.count(term);
  }

  /**
   * Adds what several terms give where they stand together; false where that is too much to look at.
   * @param {Clause} clause
   * @param {number} most
   * @param {Set<number>} terms Takes those that were found.
   */
  #all(clause, most, terms) {
    const matches = clause.flat();
    if (matches.reduce((sum, { term }) => sum + this.lists.count(term), 0) > most) return false;
    this.together.fill(0);
    this.reached.fill(0);
    const read = clause.flatMap((forms, step) => forms.map((form) => this.#step(form, step)));
    const asked = matches.reduce((bits, match) => bits | match.asked, 0);
    for (let place = 0; place < this.count; place++) {
      if (this.reached[place] < clause.length) continue;
      this.scores[place] += this.together[place];
      this.asked[place] |= asked;
    }
    for (const { term, places } of read) if (places.some((place) => this.reached[place] === clause.length)) terms.add(term);
    return true;
  }

  /**
   * Adds one of several terms where those before it stand too.
   * @param {Match} match
   * @param {number} step How many terms are before it.
   */
  #step({ term, weight }, step) {
    const given = this.#given(term, weight, Infinity);
    const places = this.lists.places.slice(0, given.length);
    places.forEach((place, i) => {
      if (this.reached[place] < step) return;
      this.reached[place] = step + 1;
      this.together[place] += given[i];
    });
    return { term, places };
  }

  /**
   * What a term gives to each of its places, in the order of the list that was read.
   * @param {number} term
   * @param {number} weight
   * @param {number} most
   */
  #given(term, weight, most) {
    const { places, times, ends } = this.lists;
    const given = new Float64Array(this.lists.read(term, most));
    this.looked += given.length;
    let i = 0;
    for (let field = 0; field < FIELDS; field++) {
      const held = ends[field] - i;
      const rare = Math.log(1 + (this.count - held + 0.5) / (held + 0.5));
      const worth = weight * BOOST[field] * rare;
      for (; i < ends[field]; i++) {
        const often = times[i];
        given[i] = worth * (D + (often * (K + 1)) / (often + this.dull[field * this.count + places[i]]));
      }
    }
    return given;
  }
}

/**
 * The same with each term that stands alone once, the best ways first.
 * @param {Clause[]} clauses
 */
function merged(clauses) {
  /** @type {Map<number, Match>} */
  const alone = new Map();
  for (const [forms] of clauses.filter(({ length }) => length === 1)) {
    for (const { term, weight, asked } of forms) {
      const before = alone.get(term);
      alone.set(term, { term, weight: weight + (before?.weight ?? 0), asked: asked | (before?.asked ?? 0) });
    }
  }
  const together = clauses.filter(({ length }) => length > 1);
  return [...[...alone.values()].map((match) => [[match]]), ...together].sort((a, b) => bestOf(b) - bestOf(a));
}

/** @param {Clause} clause */
function bestOf(clause) {
  return Math.max(...clause[0].map(({ weight }) => weight));
}

/** @param {number} bits */
function bitsOf(bits) {
  let count = 0;
  for (; bits; bits &= bits - 1) count += 1;
  return count;
}
