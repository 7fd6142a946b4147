// From a question to pages in order, each with its best places, and to what was understood.
import { Known } from "./known.js";
import { LONGEST, wantedBy } from "./question.js";
import { squeezed, wordsOf } from "./terms.js";
import { Vocabulary } from "./vocabulary.js";

/**
 * @typedef {[string, string, string, string, string, string]} Page Address, kind, title, note, summary, owner's words.
 * @typedef {[number, string, string, string]} PlaceOf Number of its page, anchor, label, first words.
 * @typedef {{words: import("./vocabulary.js").Declared[], pages: Page[], places: PlaceOf[],
 *   index: import("minisearch").AsPlainObject}} Stored What search/index.json holds.
 * @typedef {{at: string, label: string, text: string}} Spot
 * @typedef {{address: string, title: string, note: string, summary: string, said: string, spots: Spot[]}} Found
 * @typedef {{wrote: string, read: string, ours: string, at: string, sure: boolean}} Understood
 * @typedef {{found: Found[], count: number, whole: boolean, understood: Understood[], terms: string[]}} Answer
 *   `whole`: whether the pages hold everything that was asked for; `terms`: what to mark.
 */

const SHOWN = 30; // more than a thumb will scroll; better words help more than a longer list
const SPOTS = 2;
const SAME_TITLE = 4;
/** A page that lacks a word is shown all the same if it answers the others nearly as well as the best page does. */
const STRONG = 0.5;
const ASIDE = 0.1;
/** Pages that speak about the manual rather than about the work come later. */
const LATER = new Map([["rule", ASIDE], ["index", 0.7]]);
const A_WORD = /^word-/u; // its entry on the page of words: the sentence above the results leads there

/** @typedef {{score: number, held: Set<number>, spots: Map<number, number>}} Tally */

export class Search {
  /** @param {Stored} stored */
  constructor(stored) {
    this.stored = stored;
    this.known = new Known(stored.index);
    this.vocabulary = new Vocabulary(stored.words);
  }

  /**
   * @param {string} question
   * @returns {Answer}
   */
  ask(question) {
    const wanted = wantedBy(question, this.vocabulary, this.known);
    const { tallies, terms } = this.#tally(wanted);
    const most = Math.max(0, ...[...tallies.values()].map(({ held }) => held.size));
    const key = squeezed(wordsOf(question.slice(0, LONGEST)));
    const scored = [...tallies]
      .map(([page, tally]) => ({ page, tally, score: this.#score(page, tally, key) * (tally.held.size / most) }))
      .sort((a, b) => b.score - a.score || a.page - b.page);
    const enough = STRONG * (scored[0]?.score ?? 0);
    const ranked = scored.filter(({ tally, score }) => tally.held.size === most || score >= enough);
    return {
      found: ranked.slice(0, SHOWN).map(({ page, tally }) => this.#found(page, tally)),
      count: ranked.length,
      whole: most === wanted.length,
      understood: wanted.flatMap(understoodOf),
      terms: [...terms],
    };
  }

  /** @param {import("./question.js").Wanted[]} wanted */
  #tally(wanted) {
    /** @type {Map<number, Tally>} */
    const tallies = new Map();
    /** @type {Set<string>} */
    const terms = new Set();
    wanted.forEach(({ ways }, number) => {
      /** @type {Map<number, number>} */
      const best = new Map();
      for (const result of this.known.places(ways)) {
        const [page, at] = this.stored.places[result.id];
        if (A_WORD.test(at)) result.score *= ASIDE;
        const tally = tallies.get(page) ?? { score: 0, held: new Set(), spots: new Map() };
        tallies.set(page, tally);
        tally.held.add(number);
        tally.spots.set(result.id, (tally.spots.get(result.id) ?? 0) + result.score);
        best.set(page, Math.max(best.get(page) ?? 0, result.score));
        for (const term of result.terms) terms.add(term);
      }
      for (const [page, score] of best) /** @type {Tally} */ (tallies.get(page)).score += score;
    });
    return { tallies, terms };
  }

  /** @param {number} page @param {Tally} tally @param {string} key */
  #score(page, tally, key) {
    const [, kind, title] = this.stored.pages[page];
    const same = squeezed(wordsOf(title)) === key ? SAME_TITLE : 1;
    const together = Math.max(...tally.spots.values());
    return (tally.score + together) * same * (LATER.get(kind) ?? 1);
  }

  /**
   * @param {number} number
   * @param {Tally} tally
   * @returns {Found}
   */
  #found(number, tally) {
    const [address, , title, note, summary, said] = this.stored.pages[number];
    const spots = [...tally.spots]
      .sort(([, a], [, b]) => b - a)
      .map(([place]) => this.stored.places[place])
      .filter(([, at]) => at !== "")
      .slice(0, SPOTS)
      .map(([, at, label, text]) => ({ at, label, text }));
    return { address, title, note, summary, said, spots };
  }
}

/**
 * What is to be said of a part of the question, where it was taken for something else.
 * @param {import("./question.js").Wanted} wanted
 * @returns {Understood[]}
 */
function understoodOf({ words, named, read }) {
  const wrote = words.join(" ");
  const others = named.filter(
    ({ ours, how }, at) => how !== "ours" && named.findIndex((each) => each.ours === ours) === at,
  );
  if (others.length > 0) {
    return others.map(({ ours, at, how }) => ({ wrote, read: read[0] ?? "", ours, at, sure: how === "also" }));
  }
  return read.length > 0 ? [{ wrote, read: read.join(", "), ours: "", at: "", sure: true }] : [];
}
