// Makes the search index out of the texts of the pages, with the same terms as the phone's search.
// Called as: node search_index.mjs SITE NODE_MODULES; needs search/documents.json, writes search/index.json.
import { readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { pathToFileURL } from "node:url";

const [site, modules] = process.argv.slice(2);
const MiniSearch = createRequire(join(modules, "/"))("minisearch");
const { SETTINGS } = await import(pathToFileURL(join(site, "assets/search/terms.js")).href);

const EXCERPT = 150; // characters of a place that a result shows

const { words, pages } = JSON.parse(readFileSync(join(site, "search/documents.json"), "utf8"));
const index = new MiniSearch(SETTINGS);
/** Kept for the results: page number, anchor, label, first words. */
const places = [];

function add(page, at, label, excerpt, fields) {
  index.add({ id: places.length, ...fields });
  places.push([page, at, label, excerpt]);
}

function firstWords(text) {
  return text.length <= EXCERPT ? text : `${text.slice(0, EXCERPT).replace(/\s+\S*$/u, "")} …`;
}

pages.forEach((page, number) => {
  const { title, said, summary, note } = page;
  add(number, "", "", "", { title, said, prose: `${summary} ${note}` });
  for (const { at, label, do: what, prose } of page.parts) {
    const heading = /^Step \d+$/u.test(label) ? "" : label;
    add(number, at, label, firstWords(what || prose), { do: `${heading} ${what}`, prose });
  }
});

writeFileSync(
  join(site, "search/index.json"),
  JSON.stringify({
    words: words.map(({ name, at, also, heard }) => [name, at, also, heard]),
    pages: pages.map(({ address, kind, title, note, summary, said }) => [address, kind, title, note, summary, said]),
    places,
    index,
  }),
);
console.log(JSON.stringify({ places: places.length, terms: index.termCount }));
