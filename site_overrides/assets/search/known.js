// The terms of the manual, and the places that hold them.
import MiniSearch from "../vendor/minisearch.js";
import { SETTINGS } from "./terms.js";

/** A title tells more than a step, what is to be done more than what explains it. */
const BOOST = { title: 8, said: 6, do: 2, prose: 1 };
const AS_IT_IS = { tokenize: (/** @type {string} */ text) => [text], processTerm: (/** @type {string} */ term) => term };
const MAY_BEGIN = /^\p{L}{2}/u; // one letter begins half the manual, and 12 is not the beginning of 120
const READ = 4; // spellings that a slip is taken for

export class Known {
  /** @param {import("minisearch").AsPlainObject} index */
  constructor(index) {
    this.terms = new Set(index.index.map(([term]) => term));
    this.index = MiniSearch.loadJS(index, SETTINGS);
  }

  /** @param {string} term */
  has(term) {
    return this.terms.has(term);
  }

  /** @param {string} start */
  begins(start) {
    for (const term of this.terms) if (term.startsWith(start)) return true;
    return false;
  }

  /**
   * The terms that differ from this one in the fewest letters.
   * @param {string} term
   * @param {number} most
   */
  near(term, most) {
    for (let slips = 1; slips <= most; slips++) {
      const found = this.index.search(term, { ...AS_IT_IS, fuzzy: slips });
      const terms = new Set(found.flatMap((each) => each.terms));
      if (terms.size > 0) return [...terms].slice(0, READ);
    }
    return [];
  }

  /**
   * Every place that answers in one of the ways, with how well it does and by which terms.
   * @param {import("./question.js").Way[]} ways
   */
  places(ways) {
    /** @type {import("minisearch").Query[]} */
    const queries = ways
      .filter(({ terms }) => terms.length > 0)
      .map(({ terms, weight, prefix = false }) => ({
        queries: terms,
        combineWith: "AND",
        prefix: prefix && terms.every((term) => MAY_BEGIN.test(term)),
        boostTerm: () => weight,
      }));
    return this.index.search({ queries, combineWith: "OR", boost: BOOST, ...AS_IT_IS });
  }
}
