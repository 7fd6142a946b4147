// Makes the search index out of the texts of the pages, with the same terms as the phone's search.
// Called as: node search_index.mjs SITE NODE_MODULES [OLD]; needs search/documents.json, writes search/index.json. In
// place of a page's text may stand its number in the index OLD, where it is as it was.
import { readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { pathToFileURL } from "node:url";

import { merged } from "./search_again.mjs";
import { packed } from "./search_lists.mjs";

const [site, modules, before] = process.argv.slice(2);
const MiniSearch = createRequire(join(modules, "/"))("minisearch");
const { SETTINGS } = await import(pathToFileURL(join(site, "assets/search/terms.js")).href);

const EXCERPT = 150; // characters of a place that a result shows
const OF_A_PAGE = ["title", "said", "prose"];
const OF_A_PLACE = ["do", "prose"];

const { words, pages } = JSON.parse(readFileSync(join(site, "search/documents.json"), "utf8"));
const old = before ? JSON.parse(readFileSync(before, "utf8")) : undefined;
const index = new MiniSearch(SETTINGS);
let places = 0;

function add(fields) {
  index.add({ id: places, ...fields });
  places += 1;
}

function firstWords(text) {
  return text.length <= EXCERPT ? text : `${text.slice(0, EXCERPT).replace(/\s+\S*$/u, "")} …`;
}

/** The page itself is its first place; of each other a line is kept for the results. */
function spotsOf({ title, said, summary, note, parts }) {
  add({ title, said, prose: `${summary} ${note}` });
  return parts.map(({ at, label, do: what, prose }) => {
    const heading = /^Step \d+$/u.test(label) ? "" : label;
    add({ do: `${heading} ${what}`, prose });
    return [at, label, firstWords(what || prose)].join("\t");
  });
}

/** A page's line in the list of pages, how many places it has, and the lines of these. */
function entryOf(page) {
  if (typeof page === "number") return { shown: old.pages[page], size: old.places[page], lines: old.spots[page] };
  const spots = spotsOf(page);
  const { address, kind, title, note, summary, said } = page;
  return { shown: [address, kind, title, note, summary, said], size: spots.length + 1, lines: spots.join("\n") };
}

const entries = pages.map(entryOf);
const sizes = entries.map(({ size }) => size);
const stays = pages.map((page) => (typeof page === "number" ? page : undefined));
const has = (field, isPage) => (isPage ? OF_A_PAGE : OF_A_PLACE).includes(field);
writeFileSync(
  join(site, "search/index.json"),
  JSON.stringify({
    words: words.map(({ name, at, also, heard }) => [name, at, also, heard]),
    pages: entries.map(({ shown }) => shown),
    places: sizes,
    spots: entries.map(({ lines }) => lines),
    index: old ? merged(old.index, index.toJSON(), { stays, sizes, before: old.places }, has) : packed(index.toJSON()),
  }),
);
console.log(JSON.stringify({ places, terms: index.termCount }));
