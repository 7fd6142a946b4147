// Answers questions twice: as a phone does, and by MiniSearch itself, which looks at every place in full.
// Called as: node full_search.mjs SITE, with questions as JSON on standard input; writes what differs.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";

const site = process.argv[2];
const module = async (name) => import(pathToFileURL(join(site, "assets", name)).href);
const { Search, MOST_LOOKED } = await module("search/answer.js");
const { SETTINGS, squeezed, wordsOf } = await module("search/terms.js");
const { wantedBy } = await module("search/question.js");
const { default: MiniSearch } = await module("vendor/minisearch.js");

const FIELDS = ["title", "said", "do", "prose"];
const BOOST = { title: 8, said: 6, do: 2, prose: 1 };
const AS_IT_IS = { tokenize: (text) => [text], processTerm: (term) => term };
const MAY_BEGIN = /^\p{L}{2}/u;
const LATER = new Map([["rule", 0.1], ["index", 0.7]]);
const FEW = 500;

const stored = JSON.parse(readFileSync(join(site, "search/index.json"), "utf8"));
const search = new Search(stored);
const { known, vocabulary } = search;
const index = MiniSearch.loadJS(unpacked(stored.index), SETTINGS);
const places = stored.pages.flatMap((_, page) => [[page, ""], ...(stored.spots[page] ? stored.spots[page].split("\n") : []).map((line) => [page, line.split("\t")[0]])]);

/** The index in MiniSearch's own form. */
function unpacked({ terms, lists, lengths, average, places: documentCount }) {
  const written = lists.split(" ");
  const index = terms.split(" ").map((term, number) => {
    const values = numbers(Buffer.from(written[number], "base64"));
    const counts = values.splice(0, FIELDS.length);
    return [term, Object.fromEntries(counts.map((count, field) => [field, held(values, count)]).filter(([, { size }]) => size > 0).map(([field, { map }]) => [field, map]))];
  });
  const flat = numbers(Buffer.from(lengths, "base64"));
  const numbered = (make) => Object.fromEntries(Array.from({ length: documentCount }, (_, id) => [id, make(id)]));
  return {
    documentCount, nextId: documentCount, documentIds: numbered((id) => id), fieldIds: Object.fromEntries(FIELDS.map((name, field) => [name, field])),
    fieldLength: numbered((id) => flat.slice(id * FIELDS.length, (id + 1) * FIELDS.length)), averageFieldLength: average,
    storedFields: {}, dirtCount: 0, index, serializationVersion: 2,
  };
}

function held(values, count) {
  const map = {};
  for (let place = 0, i = 0; i < count; i++) {
    const step = values.shift();
    place += step >> 1;
    map[place] = step % 2 ? values.shift() : 1;
  }
  return { size: count, map };
}

function numbers(bytes) {
  const found = [];
  let bits = [];
  for (const byte of bytes) {
    bits.push(byte % 128);
    if (byte < 128) {
      found.push(bits.reduceRight((value, low) => value * 128 + low, 0));
      bits = [];
    }
  }
  return found;
}

/** Every place that answers, by the library, page for page. */
function fully(question) {
  const wanted = wantedBy(question, vocabulary, known);
  const pages = new Map();
  wanted.forEach(({ ways }, part) => {
    for (const { id, score } of asked(ways)) {
      const [page, at] = places[id];
      const own = score * (at.startsWith("word-") ? 0.1 : 1);
      const tally = pages.get(page) ?? { best: new Map(), spots: new Map() };
      pages.set(page, tally);
      tally.best.set(part, Math.max(tally.best.get(part) ?? 0, own));
      tally.spots.set(id, (tally.spots.get(id) ?? 0) + own);
    }
  });
  const most = Math.max(0, ...[...pages.values()].map(({ best }) => best.size));
  const key = squeezed(wordsOf(question));
  const score = ([page, { best, spots }]) => {
    const [, kind, title] = stored.pages[page];
    const sum = [...best.values(), Math.max(...spots.values())].reduce((a, b) => a + b, 0);
    return ((sum * (squeezed(wordsOf(title)) === key ? 4 : 1) * (LATER.get(kind) ?? 1)) * best.size) / most;
  };
  const scored = [...pages].map((each) => ({ page: each[0], score: score(each), whole: each[1].best.size === most }));
  const enough = 0.5 * Math.max(0, ...scored.map((each) => each.score));
  return { whole: most === wanted.length, found: scored.filter((each) => each.whole || each.score >= enough) };
}

function asked(ways) {
  const queries = ways
    .filter(({ terms }) => terms.length > 0)
    .map(({ terms, weight, prefix = false }) => ({
      queries: terms, combineWith: "AND", prefix: prefix && terms.every((term) => MAY_BEGIN.test(term)), boostTerm: () => weight,
    }));
  return index.search({ queries, combineWith: "OR" }, { boost: BOOST, ...AS_IT_IS });
}

/** What is wrong with the phone's answer; nothing where it is the full one. */
function wrong(question) {
  const answer = search.ask(question);
  const { found, whole } = fully(question);
  const scores = new Map(found.map(({ page, score }) => [stored.pages[page][0], score]));
  const best = found.map(({ score }) => score).toSorted((a, b) => b - a);
  if (answer.count !== found.length || answer.whole !== whole) return `${answer.count} pages (${answer.whole}), ${found.length} in full (${whole})`;
  const off = answer.found.find(({ address }, i) => !(Math.abs(scores.get(address) - best[i]) <= 1e-9 * best[i]));
  return off ? `${off.address} does not stand where it belongs` : "";
}

/** How many entries of the index a question looks at, and whether it says that there were more. */
function looked(question, most) {
  const before = known.weigher.looked;
  const { cut } = search.ask(question, most);
  return { question, entries: known.weigher.looked - before, said: cut.length > 0 };
}

const questions = JSON.parse(readFileSync(0, "utf8"));
const whole = questions.map((question) => looked(question, MOST_LOOKED));
const few = questions.map((question) => looked(question, FEW));
process.stdout.write(
  JSON.stringify({
    wrong: questions.map((question) => [question, wrong(question)]).filter(([, what]) => what),
    found: questions.filter((question) => fully(question).found.length > 0).length,
    over: [...few.filter(({ entries }) => entries > FEW), ...whole.filter(({ entries, said }) => said || entries > MOST_LOOKED)],
    unsaid: few.filter(({ entries, said }, i) => said !== entries < whole[i].entries),
    cut: few.filter(({ said }) => said).length,
  }),
);
