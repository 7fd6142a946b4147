// Makes the search index out of the texts of the pages, with the same terms as the phone's search.
// Called as: node search_index.mjs SITE NODE_MODULES; needs search/documents.json, writes search/index.json.
import { readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { pathToFileURL } from "node:url";

import { packed } from "./search_lists.mjs";

const [site, modules] = process.argv.slice(2);
const MiniSearch = createRequire(join(modules, "/"))("minisearch");
const { SETTINGS } = await import(pathToFileURL(join(site, "assets/search/terms.js")).href);

const EXCERPT = 150; // characters of a place that a result shows

const { words, pages } = JSON.parse(readFileSync(join(site, "search/documents.json"), "utf8"));
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

const spots = pages.map(spotsOf);
writeFileSync(
  join(site, "search/index.json"),
  JSON.stringify({
    words: words.map(({ name, at, also, heard }) => [name, at, also, heard]),
    pages: pages.map(({ address, kind, title, note, summary, said }) => [address, kind, title, note, summary, said]),
    places: spots.map(({ length }) => length + 1),
    spots: spots.map((lines) => lines.join("\n")),
    index: packed(index.toJSON()),
  }),
);
console.log(JSON.stringify({ places, terms: index.termCount }));
