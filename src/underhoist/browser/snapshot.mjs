// Writes an image of Python's memory with the calculators imported, and proves that it comes back.
// Equal wheels give an equal image, wherever and whenever it is made (still.mjs).
// Called as: node snapshot.mjs PYODIDE OUT LARGEST WHEEL...; OUT is sparse and compressed with gzip.
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { gzipSync } from "node:zlib";
import { sparse } from "./sparse.mjs";
import { PYTHON } from "./still.mjs";

const [folder, out, largest, ...wheels] = process.argv.slice(2);
const { loadPyodide } = await import(pathToFileURL(join(folder, "pyodide.mjs")).href);

// Each calculator and the fault finding run once: what is remembered late is there too. A restored image
// has no wheels to import from, so every module of ours is imported, and the drafting page finds it.
const WARM_UP = `
import importlib, json, pkgutil, random
import underhoist_calculators
from underhoist_calculators import all_calculators, door
from underhoist_calculators.fault_finding import door as fault_door
for module in pkgutil.walk_packages(underhoist_calculators.__path__, "underhoist_calculators."):
    importlib.import_module(module.name)
complaint = {
    "causes": [{"id": "a", "name": "A", "share": 0.6}, {"id": "b", "name": "B", "share": 0.3}],
    "checks": [
        {"id": id, "name": id, "minutes": 1, "access": "in", "bad": {id: 1, "b": 0.5}} for id in "ab"
    ],
    "levels": [{"name": "in", "minutes": 1}],
}
standings = [fault_door.run(complaint, [], most) for most in (1, 3000)]
json.dumps([standings, [door.run(each.name, door.example(each.name)) for each in all_calculators()]])
`;

const lock = JSON.parse(readFileSync(join(folder, "pyodide-lock.json"), "utf-8"));
const options = { indexURL: folder, lockFileContents: JSON.stringify({ info: lock.info, packages: {} }) };

async function take() {
  const pyodide = await loadPyodide({ ...options, env: PYTHON, _makeSnapshot: true });
  for (const wheel of wheels) pyodide.unpackArchive(new Uint8Array(readFileSync(wheel)), "wheel");
  const answers = pyodide.runPython(WARM_UP);
  return { image: pyodide.makeMemorySnapshot(), answers };
}

async function main() {
  const { image, answers } = await take();
  if (image.length > Number(largest)) {
    const [megabytes, most] = [image.length, Number(largest)].map((bytes) => (bytes / 1e6).toFixed(1));
    throw new Error(`The calculators take ${megabytes} MB of memory; a phone restores ${most} MB quickly. Import less in them.`);
  }
  const restored = await loadPyodide({ ...options, _loadSnapshot: image });
  if (restored.runPython(WARM_UP) !== answers) throw new Error("The restored calculators answer differently.");
  writeFileSync(out, gzipSync(sparse(image), { level: 9 }));
}

// Node would print the whole runtime, which is one line, before the reason.
await main().catch((error) => {
  console.error(error.message);
  process.exitCode = 1;
});
