// Which module of the pages goes into which file: with what asks for it, and into a shared one
// where several do.

/** On every page; it brings in the others. */
const FIRST = "phone/start.js";
/** Brought in by every page, once the page is there. */
const AFTER = "phone/offline-state.js";
/** Asked for by a page itself. */
const OWN = ["search/page.js"];
/** Whatever it needs stays with it: what else asks for that is on the same page, but for a complaint's. */
const ALONE = "phone/calculator.js";
/** It has few modules of its own; what it shares is kept apart from what only larger ones share. */
const SMALL = "fault/start.js";

/** The page that the views belong to. */
const VIEWED = "cards/start.js";

/** The view that a card is mostly in: the others take from it what they share with it. */
const OFTEN = "cards/steps/work-view.js";

/** The build reads it too, where there is no page. */
const BUILT = "search/terms.js";

/** Files of no module's name. */
const SHARED = "cards/shared.js";
const LARGER = "cards/frame.js";
const VIEWS = "cards/views-shared.js";

/** @typedef {Map<string, {now: string[], later: string[]}>} Graph */

/**
 * @param {(entries: string[]) => Promise<Graph>} graph
 * @returns {Promise<{file: Map<string, string>, entries: Set<string>}>} the file of each module, and
 *   the modules that a page or another file asks for by themselves
 */
export async function grouped(graph) {
  const known = await graph([FIRST, ...OWN]);
  const later = new Set([...known.values()].flatMap((each) => each.later));
  const pages = new Set([...OWN, ...(known.get(FIRST)?.later ?? [])]);
  const views = new Set([...later].filter((each) => !pages.has(each)));
  const behind = new Map([FIRST, ...pages, ...views].map((each) => [each, atOnce(known, each)]));
  const asking = (/** @type {Set<string>} */ those, /** @type {string} */ module) =>
    [...those].filter((each) => behind.get(each)?.has(module));
  const file = new Map([...known.keys()].map((module) => [module, fileFor(module)]));
  return { file, entries: new Set([FIRST, ...pages, ...views]) };

  /** @param {string} module */
  function fileFor(module) {
    const [by, later] = [asking(pages, module), asking(views, module)];
    if (behind.get(FIRST)?.has(module) || (by.includes(AFTER) && by.length > 1)) return FIRST;
    if (module === BUILT) return BUILT;
    if (by.includes(ALONE)) return by.includes(SMALL) ? FIRST : ALONE;
    if (by.length === 0) return views.has(module) ? module : fileAmongViews(later);
    // A view must not bring in another page for one module that it shares with it.
    if (by.length === 1 && (later.length === 0 || by[0] === VIEWED)) return by[0];
    return by.includes(SMALL) ? SHARED : LARGER;
  }
}

/** @param {string[]} asking */
function fileAmongViews(asking) {
  if (asking.includes(OFTEN)) return OFTEN;
  return asking.length > 1 ? VIEWS : asking[0];
}

/**
 * @param {Graph} known
 * @param {string} entry
 * @returns {Set<string>} the modules that are there before the entry runs, itself too
 */
function atOnce(known, entry) {
  const found = new Set([entry]);
  for (const module of found) for (const each of known.get(module)?.now ?? []) found.add(each);
  return found;
}
