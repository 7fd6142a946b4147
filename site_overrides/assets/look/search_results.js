/** @typedef {import("./search_worker.js").Found} Found */

const SHOWN = 30; // more than a thumb will scroll; better words help more than a longer list
const EXCERPT = 160;

/**
 * Fills the list and returns the sentence that says what was found.
 * @param {HTMLElement} list
 * @param {Found[][]} groups
 * @param {string} question
 */
export function showResults(list, groups, question) {
  list.replaceChildren(...groups.slice(0, SHOWN).map(resultOf));
  if (groups.length === 0) return `Nothing found for “${question}”. Try one word, or the trade's other word for it.`;
  if (groups.length === 1) return "One page found.";
  if (groups.length > SHOWN) return `${groups.length} pages found; the first ${SHOWN} are shown.`;
  return `${groups.length} pages found.`;
}

/** @param {Found[]} group */
function resultOf(group) {
  const page = group.find((part) => !part.location.includes("#")) ?? group[0];
  const item = document.createElement("li");
  item.append(linkTo(page));
  const text = excerpt((group.find((part) => part.text.includes("<mark>")) ?? page).text);
  if (text) item.append(text);
  return item;
}

/** @param {Found} page */
function linkTo(page) {
  const link = document.createElement("a");
  link.href = new URL(page.location, new URL(rootOfSite(), location.href)).href;
  link.append(...markedText(page.title));
  return link;
}

function rootOfSite() {
  const root = document.querySelector('meta[name="uh-root"]')?.getAttribute("content") ?? ".";
  return root.endsWith("/") ? root : `${root}/`;
}

/** @param {string} html */
function excerpt(html) {
  const parts = markedText(html);
  if (parts.length === 0) return undefined;
  const paragraph = document.createElement("p");
  let left = EXCERPT;
  for (const part of parts) {
    if (left <= 0) break;
    const words = part.textContent ?? "";
    if (words.length > left) part.textContent = `${words.slice(0, left).replace(/\s+\S*$/, "")} …`;
    left -= words.length;
    paragraph.append(part);
  }
  return paragraph;
}

/**
 * The index holds HTML; only its words and marks are kept, so that nothing in it can run.
 * @param {string} html
 * @returns {Node[]}
 */
function markedText(html) {
  const body = new DOMParser().parseFromString(html, "text/html").body;
  const walker = document.createTreeWalker(body, NodeFilter.SHOW_TEXT);
  /** @type {Node[]} */
  const parts = [];
  /** @type {Node | undefined} */
  let last;
  while (walker.nextNode()) {
    const text = walker.currentNode;
    if (last && !runsOn(last, text)) {
      parts.push(document.createTextNode(" "));
    }
    last = text;
    if (text.parentElement?.closest("mark")) {
      const mark = document.createElement("mark");
      mark.textContent = text.textContent;
      parts.push(mark);
    } else {
      parts.push(document.createTextNode(text.textContent ?? ""));
    }
  }
  return parts;
}

/**
 * Two pieces of text run on if they stand in the same paragraph, list item or cell.
 * @param {Node} before
 * @param {Node} text
 */
function runsOn(before, text) {
  const block = (/** @type {Node} */ node) =>
    node.parentElement?.closest(":not(mark, a, b, code, em, i, span, strong)");
  return block(before) === block(text);
}
