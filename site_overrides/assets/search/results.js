// Shows an answer: what was understood, how many pages there are, and each with its best places.
import { redraw } from "../phone/redraw.js";
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

/** As many results as a screen holds: what the letter before found stands until the new is drawn. */
const SCREEN = 4;

/** So long, in ms, a reader must have stopped typing before what is below the screen is drawn. */
const STOPPED = 250;

/** @typedef {(link: HTMLAnchorElement) => void} Lead Called for every link to a place of the manual. */

let shown = 0;

/**
 * @param {Answer | undefined} answer
 * @param {string} question The question; without an answer, what is to be said instead of one.
 * @param {Lead} [lead]
 */
export function showAnswer(answer, question, lead = () => {}) {
  shown += 1;
  understood.replaceChildren(...(answer?.understood ?? []).flatMap(wordsUnderstood), wordsCut(answer?.cut ?? []));
  understood.hidden = !answer?.understood.length && !answer?.cut.length;
  for (const link of understood.getElementsByTagName("a")) lead(link);
  found.textContent = answer ? sentence(answer, question) : question;
  const marks = new Marks(answer?.terms ?? []);
  const pages = answer?.found ?? [];
  for (const left of [...list.children].slice(Math.min(SCREEN, pages.length))) left.remove();
  drawFrom(0, pages, (page) => resultOf(page, marks, lead), shown);
}

/**
 * Draws a result, and each other after a frame of its own, until another answer is shown: no letter
 * waits longer than one takes to be laid out and painted. It is made between two frames, so that
 * neither the making nor the painting is one long task with the other.
 * @param {number} at
 * @param {Found[]} pages
 * @param {(page: Found) => Element} draw
 * @param {number} answer
 */
function drawFrom(at, pages, draw, answer) {
  if (answer !== shown) return;
  const page = pages[at];
  if (!page) return;
  const old = list.children[at];
  if (old) redraw(old, draw(page));
  else list.append(draw(page));
  const next = at + 1;
  const goOn = () => requestAnimationFrame(() => setTimeout(() => drawFrom(next, pages, draw, answer)));
  if (next === SCREEN) setTimeout(goOn, STOPPED);
  else goOn();
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

/** @param {string[]} cut */
function wordsCut(cut) {
  return cut.length > 0 ? `${cut.join(", ")}: in too many places to look at each. A word that tells more finds more.` : "";
}

/** @param {Found} page @param {Marks} marks @param {Lead} lead */
function resultOf({ address, title, note, summary, said, spots }, marks, lead) {
  const item = document.createElement("li");
  item.append(linkTo(address, marks.in(title)));
  if (note) item.append(paragraph("uh-results__note", [note]));
  if (said) item.append(paragraph("uh-results__said", ["“", ...marks.in(said), "”"]));
  if (spots.length === 0) item.append(paragraph("", marks.in(summary)));
  else item.append(spotsOf(address, spots, marks));
  for (const link of item.getElementsByTagName("a")) lead(link);
  return item;
}

/** @param {string} address @param {Found["spots"]} spots @param {Marks} marks */
function spotsOf(address, spots, marks) {
  const inner = document.createElement("ul");
  for (const { at, label, text } of spots) {
    const item = document.createElement("li");
    const name = document.createElement("b");
    name.append(...marks.in(label));
    const words = label ? [name, " ", ...marks.in(text)] : marks.in(text);
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

/** Sets the words that were found apart; each word is looked at once. */
class Marks {
  /** @param {string[]} terms */
  constructor(terms) {
    this.terms = new Set(terms);
    /** @type {Map<string, boolean>} */
    this.known = new Map();
  }

  /**
   * @param {string} text
   * @returns {(Node | string)[]}
   */
  in(text) {
    return text.split(/([\s,.;:!?()“”"]+)/u).map((piece) => {
      if (!this.#has(piece)) return piece;
      const mark = document.createElement("mark");
      mark.textContent = piece;
      return mark;
    });
  }

  /** @param {string} piece */
  #has(piece) {
    const known = this.known.get(piece);
    if (known !== undefined) return known;
    const has = wordsOf(piece).some((word) => termsOf(word).some((term) => this.terms.has(term)));
    this.known.set(piece, has);
    return has;
  }
}
