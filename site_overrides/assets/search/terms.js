// From text to the terms that are compared: used when the index is made and when it is asked.
// No import here: Node reads this file at build time, the worker on the phone.

/** A number (4.2, 1/2, 1-2, 205/70), or a word with whatever joins its halves (kick-down, lbf·in). */
const WORD = /\d+(?:[.,/-]\d+)*|\p{L}[\p{L}\d]*(?:[-‐‑·⋅*.&/]\p{L}[\p{L}\d]*)*/gu;
const JOINT = /[-‐‑·⋅*.&/]/u;
const SILENT = new Set(
  "a an and are cannot cant didnt doesnt dont isnt wasnt wont as at be but by for from if in is it its my of on or so than that the then there these this to was what when which will with you".split(
    " ",
  ),
);

/**
 * The words of a text as they were written, but small and without accents.
 * @param {string} text
 * @returns {string[]}
 */
export function wordsOf(text) {
  const folded = text.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase();
  return folded.replace(/['’]s\b|['’]/gu, "").match(WORD) ?? [];
}

/**
 * The terms that a word is found by: kick-down as kick, down and kickdown.
 * @param {string} word
 * @returns {string[]}
 */
export function termsOf(word) {
  const halves = word.split(JOINT);
  if (halves.length === 1 || /^\d+[.,/]/u.test(word)) return [singular(word)];
  const whole = /^\d/u.test(word) ? word : singular(halves.join(""));
  return [whole, ...halves.map(singular)];
}

/** @param {string} text */
export function tokenize(text) {
  return wordsOf(text).flatMap(termsOf);
}

/**
 * Small words carry nothing: they are in every sentence.
 * @param {string} term
 */
export function isSilent(term) {
  return SILENT.has(term);
}

/**
 * Words run together, so that "tail-housing", "tail housing" and "tailhousings" are one.
 * @param {string[]} words
 */
export function squeezed(words) {
  return words.map((word) => singular(word.split(JOINT).join(""))).join("");
}

/**
 * One form for one and many: bush of bushes, seal of seals, assembly of assemblies.
 * @param {string} word
 */
export function singular(word) {
  if (word.length < 4 || /(?:ss|us|is)$/u.test(word) || !word.endsWith("s")) return word;
  if (word.length > 4 && word.endsWith("ies")) return `${word.slice(0, -3)}y`;
  if (/(?:ch|sh|x|z|ss)es$/u.test(word)) return word.slice(0, -2);
  return word.slice(0, -1);
}

/**
 * Words of the same stem: leak of leaking and leaked, slip of slipping, change of changing.
 * @param {string} word
 * @returns {string[]}
 */
export function kinOf(word) {
  const stem = /^(.{3,}?)(?:ing|ed)$/u.exec(word)?.[1];
  if (!stem) return [`${word}ing`, `${word}ed`];
  const single = stem.replace(/(.)\1$/u, "$1");
  return [...new Set([stem, single, `${stem}e`])];
}

/**
 * The word with two neighbouring letters swapped, at each place.
 * @param {string} word
 * @returns {string[]}
 */
export function swapsOf(word) {
  return [...word].slice(1).map((letter, i) => word.slice(0, i) + letter + word[i] + word.slice(i + 2));
}

/**
 * How many letters may be wrong.
 * @param {string} word
 */
export function slipsIn(word) {
  if (word.length < 4 || /\d/u.test(word)) return 0;
  return word.length < 8 ? 1 : 2;
}

/**
 * How the index is made; the same when it is read back. `said` holds the owner's words, `do` the headings and what
 * a step tells to do, `prose` everything that explains it.
 */
export const SETTINGS = {
  fields: ["title", "said", "do", "prose"],
  tokenize,
  processTerm: (/** @type {string} */ term) => (isSilent(term) ? null : term),
};
