// Puts the pages' modules into few files, so that a phone asks for few.
// Called as: node scripts.mjs ASSETS NODE_MODULES INTO; prints nothing.
//
// Every module stays importable at its own address: what went into another file is handed on from
// there. What is loaded later, such as a view of the job cards, stays a file of its own.
import { copyFileSync, mkdirSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join, relative, resolve, sep } from "node:path";
import { pathToFileURL } from "node:url";

import { grouped } from "./script_groups.mjs";

const [assets, modules, into] = process.argv.slice(2).map((each) => resolve(each));
const { rollup } = await import(pathToFileURL(createRequire(join(modules, "/")).resolve("rollup")).href);

/** Threads: each is one file, whatever it shares with a page. */
const WORKERS = ["phone/calculator-worker.js", "phone/keeper-worker.js", "drafting/desk-worker.js", "search/worker.js"];

/** Libraries, by the address at which our modules ask for them. */
const LIBRARIES = new Map(Object.entries({
  "vendor/idb.js": "idb/build/index.js",
  "vendor/minisearch.js": "minisearch/dist/es/index.js",
  "vendor/workbox-window.js": "workbox-window/build/workbox-window.prod.mjs",
}).map(([address, file]) => [address, join(modules, file)]));
const ADDRESSES = new Map([...LIBRARIES].map(([address, file]) => [file, address]));

/** @param {string} address */
const fileOf = (address) => LIBRARIES.get(address) ?? join(assets, address);
/** @param {string} file */
const addressOf = (file) => ADDRESSES.get(file) ?? slashed(relative(assets, file));
/** @param {string} path */
const slashed = (path) => path.split(sep).join("/");

const places = {
  name: "places",
  /** @param {string} to @param {string | undefined} from */
  resolveId: (to, from) => (from && to.startsWith(".") ? fileOf(addressOf(resolve(from, "..", to))) : null),
  /** A module finds its neighbours from where it stood. @param {string | null} name @param {{moduleId: string, chunkId: string}} where */
  resolveImportMeta(name, { moduleId, chunkId }) {
    if (name !== "url") return null;
    const from = slashed(relative(dirname(chunkId), addressOf(moduleId)));
    return `new URL(${JSON.stringify(from)}, import.meta.url).href`;
  },
};

/** Reads the modules behind some entries. @param {object[]} plugins @param {string[]} [entries] */
const read = (plugins, entries) =>
  rollup({ input: entries?.map(fileOf), plugins: [...plugins, places], treeshake: false, onLog: () => {} });

/** What each module behind the entries asks for at once, and what later. @param {string[]} entries */
async function graph(entries) {
  /** @type {Map<string, {now: string[], later: string[]}>} */
  const found = new Map();
  const look = {
    name: "look",
    buildEnd() {
      for (const id of this.getModuleIds()) {
        const { importedIds, dynamicallyImportedIds } = this.getModuleInfo(id);
        found.set(addressOf(id), { now: importedIds.map(addressOf), later: dynamicallyImportedIds.map(addressOf) });
      }
    },
  };
  await (await read([look], entries)).close();
  return found;
}

/** Writes every file of the pages. @param {{file: Map<string, string>, entries: Set<string>}} groups */
async function writePages({ file, entries }) {
  const enter = {
    name: "enter",
    buildStart() {
      for (const address of [...entries, ...[...file.keys()].sort()]) {
        const preserveSignature = entries.has(address) ? "allow-extension" : "strict";
        this.emitFile({ type: "chunk", id: fileOf(address), fileName: address, preserveSignature });
      }
    },
  };
  const pages = await read([enter]);
  await pages.write({
    ...FORM, dir: into, chunkFileNames: "[name].js",
    manualChunks: (/** @type {string} */ id) => file.get(addressOf(id))?.replace(/\.js$/, ""),
  });
  await pages.close();
}
const FORM = { format: "es", minifyInternalExports: false, hoistTransitiveImports: false };

/** A large library stays a file of its own, which an update of ours leaves as it is. */
const large = {
  name: "large",
  resolveId: (/** @type {string} */ to) => (to.endsWith("/minisearch.js") ? { id: to, external: "absolute" } : null),
};

/** @param {string} address */
async function writeWorker(address) {
  const worker = await read([large], [address]);
  await worker.write({ ...FORM, dir: into, entryFileNames: address, inlineDynamicImports: true });
  await worker.close();
}

/** What only a thread is made of, as it is: tests look at it. @param {string} address */
function copy(address) {
  mkdirSync(dirname(join(into, address)), { recursive: true });
  copyFileSync(fileOf(address), join(into, address));
}

const groups = grouped(graph);
const { file } = await groups;
await writePages(await groups);
for (const address of WORKERS) await writeWorker(address);
const threads = await graph(WORKERS);
for (const address of threads.keys()) if (!file.has(address) && !WORKERS.includes(address)) copy(address);
