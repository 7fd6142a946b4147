// Makes one script of the modules behind each entry, for a file that has nothing beside it.
// Called as: node bundle.mjs ASSETS NODE_MODULES; prints JSON with the scripts "main" and "worker".
import { createRequire } from "node:module";
import { join, resolve } from "node:path";
import { pathToFileURL } from "node:url";

const [assets, modules] = process.argv.slice(2).map((each) => resolve(each));
const near = createRequire(join(modules, "/"));
const { rollup } = await import(pathToFileURL(near.resolve("rollup")).href);

/** What stands in for a module that wants a site around it. */
const INSTEAD = new Map([
  [join(assets, "phone/boot.js"), join(assets, "pack/boot.js")],
  [join(assets, "vendor/minisearch.js"), join(modules, "minisearch/dist/es/index.js")],
]);
const CLIENT = join(assets, "phone/calculator-client.js");
const OWN_CLIENT = join(assets, "pack/calculator-client.js");

const ours = {
  name: "ours",
  /** @param {string} to @param {string | undefined} from */
  resolveId(to, from) {
    if (!from) return null;
    const file = resolve(from, "..", to);
    if (file === CLIENT && from !== OWN_CLIENT) return OWN_CLIENT;
    return INSTEAD.get(file) ?? null;
  },
};

/** @param {string} entry */
async function script(entry) {
  const made = await rollup({
    input: join(assets, "pack", entry),
    plugins: [ours],
    onLog: () => {},
  });
  const { output } = await made.generate({ format: "iife", inlineDynamicImports: true });
  await made.close();
  return output[0].code;
}

console.log(JSON.stringify({ main: await script("main.js"), worker: await script("worker.js") }));
