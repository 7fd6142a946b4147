/** The calculators' own thread: takes entries, answers with the result or with what failed. */
import { restore, startAnew } from "./calculator-python.js";

/** @typedef {{written: string, wrong: string, mend: string}} Wrong */
/** @typedef {{ok: boolean, errors: Record<string, Wrong>, answer_html: string, answer_text: string}} Result */
/** @typedef {{id: number, name: string, entries: Record<string, string>}} Question */
/** @typedef {{id: number, result: Result} | {id: number, failure: string}} Reply */

/** Where the image does not come back on this browser, Python starts from nothing. */
let running = restore().catch(startAnew);
let isRestored = true;
running.catch(() => {}); // Every question that waits for it reports the failure.

addEventListener("message", async ({ data }) => postMessage(await reply(data)));

/**
 * @param {Question} question
 * @returns {Promise<Reply>}
 */
async function reply({ id, name, entries }) {
  try {
    return { id, result: await workOut(name, entries) };
  } catch (error) {
    return { id, failure: inWords(error) };
  }
}

/**
 * @param {string} name
 * @param {Record<string, string>} entries
 * @returns {Promise<Result>}
 */
async function workOut(name, entries) {
  const run = await running;
  try {
    return JSON.parse(run(name, JSON.stringify(entries)));
  } catch (error) {
    // An image holds no files, so a late import fails in it: once, it is replaced.
    if (!isRestored) throw error;
    isRestored = false;
    running = startAnew();
    return workOut(name, entries);
  }
}

/**
 * @param {unknown} error
 * @returns {string} the reason, to be put into a sentence
 */
function inWords(error) {
  // What fetch and import() throw where nothing arrives.
  if (error instanceof TypeError) return "it is not stored on this phone and there is no connection";
  const lines = (error instanceof Error ? error.message : String(error)).trim().split("\n");
  return lines.at(-1) ?? "";
}
