/** A manual in one file: one page at a time, the search, calculators and complaints that answer. */
import { LiveCalculator } from "../phone/calculator.js";
import { FaultPage } from "./fault.js";
import { Pages } from "./pages.js";
import { startSearch } from "./search.js";

/** @type {Map<HTMLElement, LiveCalculator | FaultPage>} */
const live = new Map();

/**
 * @param {HTMLElement} page
 * @param {URLSearchParams} given
 */
function opened(page, given) {
  if (!document.getElementById("worker")) return;
  const already = live.get(page);
  if (already) {
    if ([...given].length) already.fill(given);
    return;
  }
  const made = liveOn(page);
  if (!made) return;
  live.set(page, made);
  void made.start(given);
}

/** @param {HTMLElement} page */
function liveOn(page) {
  const calculator = /** @type {HTMLElement | null} */ (page.querySelector("div[data-calculator]"));
  if (calculator) return new LiveCalculator(calculator, (entries) => keep(page, filled(entries)));
  const fault = /** @type {HTMLElement | null} */ (page.querySelector("section[data-fault]"));
  return fault && new FaultPage(fault, (given) => keep(page, given));
}

/** @param {Record<string, string>} entries */
const filled = (entries) => new URLSearchParams(Object.entries(entries).filter(([, text]) => text !== ""));

/**
 * Puts what was entered into the address, behind the page's name: a reload shows it again.
 * @param {HTMLElement} page
 * @param {URLSearchParams} given
 */
function keep(page, given) {
  if (page.hidden) return; // A field that loses the focus as its page is left: the address is the next page's.
  history.replaceState(history.state, "", `#${page.id}?${given}`);
}

/** The parts stand at the end of the file: nothing is taken from it before it is whole. */
function start() {
  startSearch();
  new Pages(opened);
}

if (document.readyState === "loading") addEventListener("DOMContentLoaded", start);
else start();
