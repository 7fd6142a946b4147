// Shows an answer: what was understood, how many pages there are, and each with its best places.
import { termsOf, wordsOf } from "./terms.js";

/**
 * @typedef {import("./answer.js").Answer} Answer
 * @typedef {import("./answer.js").Found} Found
 * @typedef {import("./answer.js").Understood} Understood
 */

const understood = /** @type {HTMLElement} */ (document.getElementById("understood"));
const found = /** @type {HTMLElement} */ (document.getElementById("found"));
const list = /** @type {HTMLElement} */ (document.getElementById("results"));
const root = new URL(`${document.querySelector('meta[name="uh-root"]')?.getAttribute("content") ?? "."}/`, location.href);

/**
 * @param {Answer | undefined} answer
 * @param {string} question The question; without an answer, what is to be said instead of one.
 */
export function showAnswer(answer, question) {
  const terms = new Set(answer?.terms);
  understood.replaceChildren(...(answer?.understood ?? []).flatMap(wordsUnderstood), ...(answer?.cut ?? []).map(wordsCut));
  understood.hidden = !answer?.understood.length && !answer?.cut.length;
  found.textContent = answer ? sentence(answer, question) : question;
  list.replaceChildren(...(answer?.found ?? []).map((page) => resultOf(page, terms)));
}

/** @param {Answer} answer @param {string} question */
function sentence({ count, found: { length }, whole }, question) {
  if (count === 0) return `Nothing found for “${question}”. Try one word, or the trade's other word for it.`;
  const pages = count === 1 ? "One page" : `${count} pages`;
  const first = count > length ? `; the first ${length} are shown` : "";
  return whole ? `${pages} found${first}.` : `No page has all these words. ${pages} with most of them${first}.`;
}

/**
 * @param {Understood} each
 * @returns {(Node | string)[]}
 */
function wordsUnderstood({ wrote, read, ours, at, sure }) {
  if (!ours) return [`${wrote}: read as ${read}. `];
  const link = document.createElement("a");
  link.href = new URL(at, root).href;
  link.textContent = ours;
  const taken = read ? `${wrote}, read as ${read}` : wrote;
  return [`${taken}: ${sure ? "we say" : "we may say"} `, link, ". "];
}

/** @param {string} wrote */
function wordsCut(wrote) {
  return `${wrote}: too common for all its places to be looked at. A word beside it that tells more finds more. `;
}

/** @param {Found} page @param {Set<string>} terms */
function resultOf({ address, title, note, summary, said, spots }, terms) {
  const item = document.createElement("li");
  item.append(linkTo(address, marked(title, terms)));
  if (note) item.append(paragraph("uh-results__note", [note]));
  if (said) item.append(paragraph("uh-results__said", ["“", ...marked(said, terms), "”"]));
  if (spots.length === 0) item.append(paragraph("", marked(summary, terms)));
  else item.append(spotsOf(address, spots, terms));
  return item;
}

/** @param {string} address @param {Found["spots"]} spots @param {Set<string>} terms */
function spotsOf(address, spots, terms) {
  const inner = document.createElement("ul");
  for (const { at, label, text } of spots) {
    const item = document.createElement("li");
    const name = document.createElement("b");
    name.append(...marked(label, terms));
    const words = label ? [name, " ", ...marked(text, terms)] : marked(text, terms);
    item.append(linkTo(`${address}#${at}`, words));
    inner.append(item);
  }
  return inner;
}

/** @param {string} address @param {(Node | string)[]} words */
function linkTo(address, words) {
  const link = document.createElement("a");
  link.href = new URL(address, root).href;
  link.append(...words);
  return link;
}

/** @param {string} name @param {(Node | string)[]} words */
function paragraph(name, words) {
  const made = document.createElement("p");
  made.className = name;
  made.append(...words);
  return made;
}

/**
 * The text with the words that were found set apart.
 * @param {string} text
 * @param {Set<string>} terms
 * @returns {(Node | string)[]}
 */
function marked(text, terms) {
  return text.split(/([\s,.;:!?()“”"]+)/u).map((piece) => {
    if (!wordsOf(piece).some((word) => termsOf(word).some((term) => terms.has(term)))) return piece;
    const mark = document.createElement("mark");
    mark.textContent = piece;
    return mark;
  });
}
