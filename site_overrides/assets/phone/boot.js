/** Brings up Python with the calculators. A restored memory image would take its place here. */
import { ROOT, readJson } from "./site.js";

/** @typedef {import("./site.js").RuntimeManifest} RuntimeManifest */
/** @typedef {typeof import("../../runtime/pyodide.mjs")} PyodideModule */
/** @typedef {Awaited<ReturnType<PyodideModule["loadPyodide"]>>} Pyodide */

/**
 * Runs one calculator: its name and its entries as JSON give the result as JSON.
 * @typedef {(name: string, entries: string) => string} RunCalculator
 */

const DOOR = `
import json, random
from underhoist_calculators import door

random.seed()

def run(name, entries):
    return json.dumps(door.run(name, json.loads(entries)))

run
`;

/**
 * Starts Python and imports the calculators. Called once in a worker.
 * @returns {Promise<RunCalculator>}
 */
export async function boot() {
  /** @type {RuntimeManifest} */
  const manifest = await readJson("runtime/manifest.json");
  const core = new URL(manifest.core, ROOT).href;
  const wheels = Promise.all(manifest.wheels.map(readWheel));
  /** @type {PyodideModule} */
  const { loadPyodide } = await import(`${core}pyodide.mjs`);
  const pyodide = await loadPyodide({ indexURL: core, lockFileContents: JSON.stringify(manifest.lock) });
  for (const wheel of await wheels) pyodide.unpackArchive(wheel, "wheel");
  return pyodide.runPython(DOOR);
}

/**
 * @param {string} url
 * @returns {Promise<ArrayBuffer>}
 */
async function readWheel(url) {
  const response = await fetch(new URL(url, ROOT));
  if (!response.ok) throw new Error(`${url} did not arrive (${response.status})`);
  return response.arrayBuffer();
}
