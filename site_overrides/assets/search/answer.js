// From a question to pages in order, each with its best places, and to what was understood.
import { Known } from "./known.js";
import { LONGEST, wantedBy } from "./question.js";
import { Places, Tally } from "./tally.js";
import { squeezed, wordsOf } from "./terms.js";
import { Vocabulary } from "./vocabulary.js";

/**
 * @typedef {[string, string, string, string, string, string]} Page Address, kind, title, note, summary, owner's words.
 * @typedef {{words: import("./vocabulary.js").Declared[], pages: Page[], places: number[], spots: string[],
 *   index: import("./lists.js").Packed}} Stored What search/index.json holds: `places` is how many each page has, the
 *   page itself the first; `spots` has a line for each other: anchor, label and first words with tabs between.
 * @typedef {{at: string, label: string, text: string}} Spot
 * @typedef {{address: string, title: string, note: string, summary: string, said: string, spots: Spot[]}} Found
 * @typedef {{wrote: string, read: string, ours: string, at: string, sure: boolean}} Understood
 * @typedef {{found: Found[], count: number, whole: boolean, understood: Understood[], cut: string[],
 *   terms: string[]}} Answer `whole`: whether the pages hold everything that was asked for; `cut`: words in so many places
 *   that not all were looked at; `terms`: what to mark.
 */

const SHOWN = 30; // more than a thumb will scroll; better words help more than a longer list
const SPOTS = 2;
const SAME_TITLE = 4;
/** A page that lacks a word is shown all the same if it answers the others nearly as well as the best page does. */
const STRONG = 0.5;
/** Pages that speak about the manual rather than about the work come later. */
const LATER = new Map([["rule", 0.1], ["index", 0.7]]);

/** Entries of the index that a question may look at, whatever the manual's size: a tenth of a second on a slow phone. */
export const MOST_LOOKED = 1_000_000;

export class Search {
  /** @param {Stored} stored */
  constructor(stored) {
    this.stored = stored;
    this.known = new Known(stored.index);
    this.vocabulary = new Vocabulary(stored.words);
    this.places = new Places(stored);
    /** @type {string[]} */
    this.titles = []; // run together, each when it is first compared
  }

  /**
   * @param {string} question
   * @param {number} most How many entries of the index may be looked at.
   * @returns {Answer}
   */
  ask(question, most = MOST_LOOKED) {
    const wanted = wantedBy(question, this.vocabulary, this.known);
    const tally = new Tally(this.places);
    const parts = wanted.map(({ words, ways }) => {
      const part = this.known.weigh(ways, Math.floor(most / wanted.length));
      tally.add(this.known.weigher.scores);
      return { ...part, wrote: words.join(" ") };
    });
    const held = tally.most();
    const cut = parts.filter((part) => part.cut).map(({ wrote }) => wrote);
    const ranked = this.#ranked(tally, held, squeezed(wordsOf(question.slice(0, LONGEST))));
    return {
      found: ranked.slice(0, SHOWN).map((page) => this.#found(page, tally)),
      count: ranked.length,
      whole: held + cut.length >= wanted.length,
      understood: wanted.flatMap(understoodOf),
      cut,
      terms: [...new Set(parts.flatMap(({ terms }) => terms))],
    };
  }

  /**
   * The pages in order, without those that lack a word and are no near answer either.
   * @param {Tally} tally
   * @param {number} most Parts of the question that the best pages hold.
   * @param {string} key
   */
  #ranked(tally, most, key) {
    const scores = new Map(tally.pages().map((page) => [page, (this.#score(page, tally, key) * tally.held(page)) / most]));
    const score = (/** @type {number} */ page) => /** @type {number} */ (scores.get(page));
    const sorted = [...scores.keys()].sort((a, b) => score(b) - score(a) || a - b);
    const enough = STRONG * (sorted.length > 0 ? score(sorted[0]) : 0);
    return sorted.filter((page) => tally.held(page) === most || score(page) >= enough);
  }

  /** @param {number} page @param {Tally} tally @param {string} key */
  #score(page, tally, key) {
    const [, kind, title] = this.stored.pages[page];
    this.titles[page] ??= squeezed(wordsOf(title));
    const same = this.titles[page] === key ? SAME_TITLE : 1;
    return tally.score(page) * same * (LATER.get(kind) ?? 1);
  }

  /**
   * @param {number} number
   * @param {Tally} tally
   * @returns {Found}
   */
  #found(number, tally) {
    const [address, , title, note, summary, said] = this.stored.pages[number];
    const lines = this.stored.spots[number].split("\n");
    const spots = tally
      .spots(number)
      .filter((spot) => spot > 0)
      .map((spot) => lines[spot - 1].split("\t"))
      .filter(([at]) => at !== "")
      .slice(0, SPOTS)
      .map(([at, label, text]) => ({ at, label, text }));
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
