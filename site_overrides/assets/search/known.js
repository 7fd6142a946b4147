// The terms of the manual, and how well its places answer.
import MiniSearch from "../vendor/minisearch.js";
import { Weigher } from "./weigh.js";

const AS_IT_IS = { tokenize: (/** @type {string} */ text) => [text], processTerm: (/** @type {string} */ term) => term };
const MAY_BEGIN = /^\p{L}{2}/u; // one letter begins half the manual, and 12 is not the beginning of 120
const BEGUN = 0.375; // what the beginning of a word is worth beside the whole word
const MISSING = 0.3; // and how fast less, the more letters are missing
const READ = 4; // spellings that a slip is taken for
const BITS = 31;

/** @typedef {import("./weigh.js").Match} Match */

export class Known {
  /** @param {import("./lists.js").Packed} packed */
  constructor(packed) {
    this.terms = packed.terms.split(" ");
    this.numbers = new Map(this.terms.map((term, number) => [term, number]));
    this.weigher = new Weigher(packed);
    /** @type {MiniSearch<{id: number, term: string}> | undefined} */
    this.spellings = undefined;
  }

  /** @param {string} term */
  has(term) {
    return this.numbers.has(term);
  }

  /** @param {string} start */
  begins(start) {
    return this.terms[this.#after(start)]?.startsWith(start) ?? false;
  }

  /**
   * The terms that differ from this one in the fewest letters, those of the most places first.
   * @param {string} term
   * @param {number} most
   */
  near(term, most) {
    this.spellings ??= spellingsOf(this.terms);
    const { lists } = this.weigher;
    for (let slips = 1; slips <= most; slips++) {
      const found = this.spellings.search(term, { fuzzy: slips }).map(({ id }) => Number(id));
      const often = new Map(found.map((number) => [number, lists.count(number)]));
      const first = found.sort((a, b) => Number(often.get(b)) - Number(often.get(a)) || a - b).slice(0, READ);
      if (first.length > 0) return first.map((number) => this.terms[number]);
    }
    return [];
  }

  /**
   * Weighs every place that answers in one of the ways; the weights are the weigher's scores.
   * @param {import("./question.js").Way[]} ways
   * @param {number} most How many entries of the lists may be looked at.
   */
  weigh(ways, most) {
    const asked = [...new Set(ways.flatMap(({ terms }) => terms))];
    const clauses = ways.map(({ terms, weight, prefix = false }) => {
      const begun = prefix && terms.every((term) => MAY_BEGIN.test(term));
      return terms.map((term) => this.#forms(term, weight, begun, 1 << Math.min(asked.indexOf(term), BITS)));
    });
    const answering = clauses.filter((clause) => clause.length > 0 && clause.every((forms) => forms.length > 0));
    const { terms, cut } = this.weigher.weigh(answering, most);
    return { terms: terms.map((number) => this.terms[number]), cut };
  }

  /**
   * A term that was asked for and, if that may be, those that begin with it.
   * @param {string} start
   * @param {number} weight
   * @param {boolean} begun
   * @param {number} asked
   * @returns {Match[]}
   */
  #forms(start, weight, begun, asked) {
    const forms = [];
    for (let term = this.#after(start); this.terms[term]?.startsWith(start); term++) {
      const { length } = this.terms[term];
      const missing = length - start.length;
      if (missing > 0 && !begun) break;
      forms.push({ term, weight: missing > 0 ? (weight * BEGUN * length) / (length + MISSING * missing) : weight, asked });
    }
    return forms;
  }

  /**
   * The number of the first term that is not before this one.
   * @param {string} start
   */
  #after(start) {
    let low = 0;
    let high = this.terms.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.terms[middle] < start) low = middle + 1;
      else high = middle;
    }
    return low;
  }
}

/**
 * Finds a term by letters that are nearly its own; made when the first slip is looked for.
 * @param {string[]} terms
 */
function spellingsOf(terms) {
  /** @type {MiniSearch<{id: number, term: string}>} */
  const spellings = new MiniSearch({ fields: ["term"], ...AS_IT_IS });
  spellings.addAll(terms.map((term, id) => ({ id, term })));
  return spellings;
}
