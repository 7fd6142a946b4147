/** A manual in one file: one page at a time, the search, the calculators. */
import { LiveCalculator } from "../phone/calculator.js";
import { Pages } from "./pages.js";
import { startSearch } from "./search.js";

/** @type {Map<HTMLElement, LiveCalculator>} */
const live = new Map();

/**
 * @param {HTMLElement} page
 * @param {URLSearchParams} given
 */
function opened(page, given) {
  const root = /** @type {HTMLElement | null} */ (page.querySelector("div[data-calculator]"));
  if (!root || !document.getElementById("worker")) return;
  const already = live.get(page);
  if (already && ![...given].length) return;
  const calculator = already ?? new LiveCalculator(root, (entries) => keep(page, entries));
  live.set(page, calculator);
  if (already) calculator.fill(given);
  else calculator.start(given);
}

/**
 * Puts the entries into the address, behind the page's name: a reload shows them again.
 * @param {HTMLElement} page
 * @param {Record<string, string>} entries
 */
function keep(page, entries) {
  if (page.hidden) return; // A field that loses the focus as its page is left: the address is the next page's.
  const given = new URLSearchParams(Object.entries(entries).filter(([, text]) => text !== ""));
  history.replaceState(history.state, "", `#${page.id}?${given}`);
}

/** The parts stand at the end of the file: nothing is taken from it before it is whole. */
function start() {
  startSearch();
  new Pages(opened);
}

if (document.readyState === "loading") addEventListener("DOMContentLoaded", start);
else start();
