// Makes this process the same everywhere and at any time, so that equal inputs give an equal image of
// memory: imported before the runtime, which takes over clock, chance, language and program name.
import crypto from "node:crypto";

const MOMENT = Date.UTC(2020, 0, 1);
const BYTE = 7; // in place of every random one; a phone seeds anew what it restores

/** Environment for Python: the seed of its hashes decides the order of sets, and so the memory. */
export const PYTHON = { HOME: "/home/pyodide", PYTHONHASHSEED: "0" };

const RealDate = Date;
globalThis.Date = class extends RealDate {
  constructor(...given) {
    super(...(given.length ? given : [MOMENT]));
  }
  static now() {
    return MOMENT;
  }
};
performance.now = () => 0;
Math.random = () => 0.5;

const filled = (array) => {
  new Uint8Array(array.buffer, array.byteOffset, array.byteLength).fill(BYTE);
  return array;
};
const replace = (thing, name, value) => Object.defineProperty(thing, name, { value, configurable: true });
replace(globalThis.crypto, "getRandomValues", filled);
replace(crypto, "randomFillSync", filled);
replace(crypto, "randomBytes", (size) => Buffer.alloc(size, BYTE));

process.env.TZ = "UTC";
process.argv[1] = "/image";
replace(globalThis, "navigator", { language: "en-GB", languages: ["en-GB"], userAgent: "", platform: "", hardwareConcurrency: 1 });
