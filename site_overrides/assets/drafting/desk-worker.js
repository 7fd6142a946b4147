/** The desk's own thread: the manual laid out in Python, questions about one draft answered. */
import { draftingWheels, restored, startedAnew } from "../phone/boot.js";
import { ROOT } from "../phone/site.js";

/** @typedef {{id: number, question: object}} Question */
/** @typedef {{id: number, answer: unknown} | {id: number, failure: string} | {failure: string} | {ready: true}} Reply */
/** @typedef {(question: string) => string} Ask */

const DOOR = `
import importlib
importlib.invalidate_caches()
from underhoist.drafting import door
(door.open_desk, door.ask)
`;

/** Where the image does not come back on this browser, Python starts from nothing. */
const running = layOut(restored).catch(() => layOut(startedAnew));
running.then(
  () => postMessage({ ready: true }),
  (error) => postMessage({ failure: inWords(error) }),
);

addEventListener("message", async ({ data }) => postMessage(await reply(data)));

/**
 * @param {typeof restored} bringUp
 * @returns {Promise<Ask>}
 */
async function layOut(bringUp) {
  const [pyodide, wheels, manual] = await Promise.all([bringUp(), draftingWheels(), manualText()]);
  for (const wheel of wheels) pyodide.unpackArchive(wheel, "wheel");
  const [openDesk, ask] = pyodide.runPython(DOOR);
  openDesk(manual);
  return ask;
}

async function manualText() {
  const response = await fetch(new URL("drafting/manual.json", ROOT));
  if (!response.ok) throw new Error(`the manual's texts did not arrive (${response.status})`);
  return response.text();
}

/**
 * @param {Question} asked
 * @returns {Promise<Reply>}
 */
async function reply({ id, question }) {
  try {
    const ask = await running;
    return { id, answer: JSON.parse(ask(JSON.stringify(question))) };
  } catch (error) {
    return { id, failure: inWords(error) };
  }
}

/**
 * @param {unknown} error
 * @returns {string} the reason, to be put into a sentence
 */
function inWords(error) {
  // What fetch and import() throw where nothing arrives.
  if (error instanceof TypeError) return "it is not stored on this device and there is no connection";
  const lines = (error instanceof Error ? error.message : String(error)).trim().split("\n");
  return lines.at(-1) ?? "";
}
