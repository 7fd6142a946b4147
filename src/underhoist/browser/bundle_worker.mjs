// Makes one plain script of the service worker's modules and those that it shares with pages.
// Called as: node bundle_worker.mjs ENTRY ASSETS NODE_MODULES; prints the script.
import { createRequire } from "node:module";
import { join, resolve } from "node:path";
import { pathToFileURL } from "node:url";

const [entry, assets, modules] = process.argv.slice(2).map((each) => resolve(each));
const { rollup } = await import(pathToFileURL(createRequire(join(modules, "/")).resolve("rollup")).href);

const SHARED = "/site_overrides/assets/";

const ours = {
  name: "ours",
  /** Every update fetches the script anew: what is said of a function stays in the source. @param {string} code */
  transform: (code) => ({ code: code.replace(/^ *\/\*\*[^]*?\*\/\n/gm, ""), map: null }),
  /** An installed builder has the assets elsewhere. @param {string} to */
  resolveId(to) {
    const at = to.indexOf(SHARED);
    return at < 0 ? null : join(assets, to.slice(at + SHARED.length));
  },
  /** The script lies at the site's root, and only phone/site.js asks where it is. @param {string | null} asked */
  resolveImportMeta(asked) {
    return asked === "url" ? 'new URL("assets/phone/site.js", self.registration.scope).href' : null;
  },
};

const made = await rollup({ input: entry, plugins: [ours] });
const { output } = await made.generate({ format: "iife" });
await made.close();
process.stdout.write(output[0].code);
