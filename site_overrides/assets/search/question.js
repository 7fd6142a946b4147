// A question parted into what it asks for, each with everything that would answer it.
import { isSilent, kinOf, slipsIn, swapsOf, termsOf, wordsOf } from "./terms.js";

/** @typedef {import("./vocabulary.js").Named} Named */

/**
 * Terms that must all be in one place, and how good a match that is.
 * @typedef {{terms: string[], weight: number, prefix?: boolean}} Way
 * @typedef {{words: string[], ways: Way[], named: Named[], read: string[]}} Wanted
 *   `named`: what the vocabulary makes of it; `read`: the spelling that was taken instead.
 */

/** Letters and words beyond these are not looked at: nobody asks so much, and it would take long. */
export const LONGEST = 200;
const MOST_WORDS = 10;

const SHORTEST = 3; // letters of half a word

const EXACT = 1;
const ALSO = 0.9;
const KIN = 0.6;
const HEARD = 0.5;
const PREFIX = 0.4;
const OTHER = 0.2;
const SLIP = 0.4;

/**
 * @param {string} text
 * @param {import("./vocabulary.js").Vocabulary} vocabulary
 * @param {import("./known.js").Known} known
 * @returns {Wanted[]}
 */
export function wantedBy(text, vocabulary, known) {
  const words = wordsOf(text.slice(0, LONGEST)).slice(0, MOST_WORDS);
  /** @type {Wanted[]} */
  const wanted = [];
  for (let at = 0; at < words.length; at += Math.max(1, wanted.at(-1)?.words.length ?? 1)) {
    wanted.push(wantedAt(words.slice(at), vocabulary, known));
  }
  const telling = wanted.filter(({ words: [first, ...rest] }) => rest.length > 0 || !isSilent(first));
  return telling.length > 0 ? telling : wanted;
}

/**
 * The longest beginning of the words that means something.
 * @param {string[]} words
 * @param {import("./vocabulary.js").Vocabulary} vocabulary
 * @param {import("./known.js").Known} known
 * @returns {Wanted}
 */
function wantedAt(words, vocabulary, known) {
  for (let count = Math.min(vocabulary.longest, words.length); count > 0; count--) {
    const some = words.slice(0, count);
    const named = vocabulary.meaning(some);
    if (named.length > 0) return asNamed(some, named, known);
  }
  const joined = words.length > 1 ? words[0] + words[1] : "";
  if (known.has(joined)) {
    const pair = words.slice(0, 2);
    return { words: pair, ways: [way([joined]), way(pair.flatMap(termsOf))], named: [], read: [] };
  }
  if (isSilent(words[0])) return asWritten(words[0], known);
  for (let count = Math.min(vocabulary.longest, words.length); count > 0; count--) {
    const some = words.slice(0, count);
    if (!some.some((word) => isStrange(word, known))) break;
    const named = vocabulary.meant(some);
    if (named.length > 0) return { ...asNamed(some, named, known), read: [named[0].name] };
  }
  return isStrange(words[0], known) ? asMeant(words[0], known) : asWritten(words[0], known);
}

/**
 * Whether nothing in the manual is written so, begins so or is of the same stem.
 * @param {string} word
 * @param {import("./known.js").Known} known
 */
function isStrange(word, known) {
  const terms = termsOf(word);
  return !isSilent(word) && !terms.some((term) => known.has(term) || known.begins(term) || kinOf(term).some((kin) => known.has(kin)));
}

/**
 * @param {string[]} words
 * @param {Named[]} named
 * @param {import("./known.js").Known} known
 * @returns {Wanted}
 */
function asNamed(words, named, known) {
  const own = asWritten(words.join(" "), known).ways;
  const ours = named.map(({ ours: name, how }) =>
    way(wordsOf(name).flatMap(termsOf), how === "heard" ? HEARD : how === "also" ? ALSO : EXACT),
  );
  const others = named.flatMap((each) => each.others).map((name) => way(wordsOf(name).flatMap(telling), OTHER));
  return { words, ways: [...own, ...ours, ...others], named, read: [] };
}

/**
 * @param {string} text
 * @param {import("./known.js").Known} known
 * @returns {Wanted}
 */
function asWritten(text, known) {
  const words = wordsOf(text);
  const ways = [way(words.flatMap(telling))];
  if (words.length === 1) {
    const terms = termsOf(words[0]);
    ways.push(way(terms.slice(0, 1), EXACT));
    ways.push({ ...way(terms, PREFIX), prefix: true });
    for (const kin of kinOf(terms[0])) if (known.has(kin)) ways.push(way([kin], KIN));
  }
  return { words, ways, named: [], read: [] };
}

/**
 * The halves of a joined word: kick and down; where the manual joins them, so much the better.
 * @param {string} word
 */
function telling(word) {
  const terms = termsOf(word);
  return (terms.length > 1 ? terms.slice(1) : terms).filter((term) => !isSilent(term));
}

/**
 * A word that the manual does not know: two words run together, or a slip of the finger.
 * @param {string} word
 * @param {import("./known.js").Known} known
 * @returns {Wanted}
 */
function asMeant(word, known) {
  const [term] = termsOf(word);
  const swapped = slipsIn(term) > 0 ? swapsOf(term).filter((each) => known.has(each)) : [];
  const near = swapped.length > 0 ? swapped : known.near(term, slipsIn(term));
  if (near.length > 0) return { words: [word], ways: near.map((each) => way([each], SLIP)), named: [], read: near };
  const halves = halvesOf(term, known);
  return { words: [word], ways: halves.length > 0 ? [way(halves)] : [], named: [], read: halves.length > 0 ? [halves.join(" ")] : [] };
}

/**
 * The two words of the manual that were run together; nothing where there are none.
 * @param {string} term
 * @param {import("./known.js").Known} known
 */
function halvesOf(term, known) {
  for (let at = SHORTEST; at <= term.length - SHORTEST; at++) {
    const halves = [term.slice(0, at), term.slice(at)];
    if (halves.every((half) => known.has(half))) return halves;
  }
  return [];
}

/**
 * @param {string[]} terms
 * @returns {Way}
 */
function way(terms, weight = EXACT) {
  return { terms: [...new Set(terms)], weight };
}
