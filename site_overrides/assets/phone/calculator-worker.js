/** The calculators' own thread: takes entries, answers with the result or with what failed. */
import { boot } from "./boot.js";

/** @typedef {{written: string, wrong: string, mend: string}} Wrong */
/** @typedef {{ok: boolean, errors: Record<string, Wrong>, answer_html: string, answer_text: string}} Result */
/** @typedef {{id: number, name: string, entries: Record<string, string>}} Question */
/** @typedef {{id: number, result: Result} | {id: number, failure: string}} Reply */

const running = boot();
running.catch(() => {}); // Every question that waits for it reports the failure.

addEventListener("message", async ({ data }) => postMessage(await reply(data)));

/**
 * @param {Question} question
 * @returns {Promise<Reply>}
 */
async function reply({ id, name, entries }) {
  try {
    const run = await running;
    return { id, result: JSON.parse(run(name, JSON.stringify(entries))) };
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
  if (error instanceof TypeError) return "it is not stored on this phone and there is no connection";
  const lines = (error instanceof Error ? error.message : String(error)).trim().split("\n");
  return lines.at(-1) ?? "";
}
