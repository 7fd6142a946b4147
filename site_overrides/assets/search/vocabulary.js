// The shop's words and what others call the same: the one place where a question is widened.
import MiniSearch from "../vendor/minisearch.js";
import { slipsIn, squeezed, swapsOf, wordsOf } from "./terms.js";

/**
 * A name in the vocabulary: `how` says whether it is our own word, another name of the same thing,
 * or a name that may mean something else too; `others` are the names that may stand in a text beside ours.
 * @typedef {{name: string, ours: string, at: string, how: "ours" | "also" | "heard", others: string[]}} Named
 * @typedef {[string, string, string[], string[]]} Declared Our word, its address, also, heard.
 */

const AS_IT_IS = { tokenize: (/** @type {string} */ text) => [text], processTerm: (/** @type {string} */ term) => term };

export class Vocabulary {
  /** @param {Declared[]} declared */
  constructor(declared) {
    /** @type {Map<string, Named[]>} */
    this.named = new Map();
    for (const [ours, at, also, heard] of declared) {
      const entry = { ours, at, others: heard };
      this.#add(ours, { ...entry, name: ours, how: "ours" });
      for (const name of also) this.#add(name, { ...entry, name, how: "also" });
      for (const name of heard) this.#add(name, { ...entry, name, how: "heard" });
    }
    this.names = new MiniSearch({ fields: ["id"], ...AS_IT_IS });
    this.names.addAll([...this.named.keys()].map((id) => ({ id })));
    this.longest = Math.max(1, ...[...this.named.values()].flat().map(({ name }) => wordsOf(name).length));
  }

  /** @param {string} name @param {Named} entry */
  #add(name, entry) {
    const key = squeezed(wordsOf(name));
    this.named.set(key, [...(this.named.get(key) ?? []), entry]);
  }

  /**
   * What these words name, however they are joined.
   * @param {string[]} words
   */
  meaning(words) {
    return this.named.get(squeezed(words)) ?? [];
  }

  /**
   * What these words name if they were typed with a slip.
   * @param {string[]} words
   */
  meant(words) {
    const key = squeezed(words);
    if (slipsIn(key) === 0) return [];
    const swapped = swapsOf(key).find((each) => this.named.has(each));
    if (swapped) return this.named.get(swapped) ?? [];
    for (let slips = 1; slips <= slipsIn(key); slips++) {
      const near = this.names.search(key, { fuzzy: slips });
      if (near.length > 0) return this.named.get(String(near[0].id)) ?? [];
    }
    return [];
  }
}
