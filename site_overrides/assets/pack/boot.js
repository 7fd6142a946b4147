/** Brings up Python out of what the file holds. In a manual's file it stands in for phone/boot.js. */
import { wholeImage } from "../phone/sparse-image.js";
import { unpacked } from "./dense.js";

/** @typedef {import("../phone/boot.js").PyodideModule} PyodideModule */
/** @typedef {import("../phone/boot.js").Pyodide} Pyodide */
/** @typedef {import("../phone/boot.js").Options} Options */
/** @typedef {import("./dense.js").Packed} Packed */

/** Where Python believes its files to be: nothing is ever asked for there. */
const NOWHERE = "https://file.invalid/";

/** @type {Promise<Map<string, Packed>>} */
const parts = new Promise((resolve) => {
  addEventListener("message", (event) => {
    /** @type {Packed[] | undefined} */
    const held = event.data.parts;
    if (!held) return;
    event.stopImmediatePropagation(); // It is no question.
    resolve(new Map(held.map((part) => [part.name, part])));
  });
});

/**
 * Restores the memory image, in which the calculators are imported already.
 * @returns {Promise<Pyodide>}
 */
export async function restored() {
  return load({ _loadSnapshot: bytes("image").then(wholeImage) });
}

/**
 * Starts Python from nothing, with the calculators' wheels unpacked.
 * @returns {Promise<Pyodide>}
 */
export async function startedAnew() {
  const pyodide = await load({});
  for (const name of (await parts).keys()) {
    if (name.endsWith(".whl")) pyodide.unpackArchive(await bytes(name), "wheel");
  }
  return pyodide;
}

/** @param {Options} more */
async function load(more) {
  globalThis.fetch = fromParts;
  await import(await address("pyodide.asm.js"));
  /** @type {PyodideModule} */
  const { loadPyodide } = await import(await address("pyodide.mjs"));
  const lockFileContents = await (await found("lock.json")).text();
  return loadPyodide({ indexURL: NOWHERE, packageBaseUrl: NOWHERE, lockFileContents, ...more });
}

/**
 * In place of the worker's own fetch: everything that is asked for is in the file.
 * @param {RequestInfo | URL} asked
 */
async function fromParts(asked) {
  const url = String(asked instanceof Request ? asked.url : asked);
  return new Response(await found(url.slice(url.lastIndexOf("/") + 1)));
}

/** @param {string} name */
async function found(name) {
  const part = (await parts).get(name);
  if (!part) throw new Error(`${name} is missing: this file was not copied whole`);
  return unpacked(part);
}

/** @param {string} name */
const address = async (name) => URL.createObjectURL(await found(name));

/** @param {string} name */
const bytes = async (name) => (await found(name)).arrayBuffer();
