/** The calculators' own thread: takes questions, answers with the result or with what failed. */
import { restore, startAnew } from "./calculator-python.js";

/** @typedef {{written: string, wrong: string, mend: string}} Wrong */
/** @typedef {{values: Record<string, any>}} Answer `values` holds what other pages go by, such as a pattern's code */
/** @typedef {{ok: boolean, errors: Record<string, Wrong>, answer: Answer | null, answer_html: string, answer_text: string}} Result */
/** @typedef {import("./calculator-python.js").CalculatorQuestion | import("./calculator-python.js").FaultQuestion} Question */
/** @typedef {{id: number, result: unknown} | {id: number, failure: string}} Reply */

/** @typedef {import("./calculator-python.js").Answer} Ask */

/** @type {Promise<Ask> | undefined} */
let running;
let isRestored = true;

/** Brings Python up. Where the image does not come back on this browser, it starts from nothing. */
function begin() {
  running ??= restore().catch(startAnew);
  running.catch(() => {}); // Every question that waits for it reports the failure.
  return running;
}

/** The thread itself may be there before the page is painted; its work waits for the page's word. */
addEventListener("message", async ({ data }) => {
  if (data === "begin") void begin();
  else postMessage(await reply(data));
});

/**
 * @param {{id: number, question: Question}} asked
 * @returns {Promise<Reply>}
 */
async function reply({ id, question }) {
  try {
    return { id, result: await workOut(question) };
  } catch (error) {
    return { id, failure: inWords(error) };
  }
}

/**
 * @param {Question} question
 * @returns {Promise<unknown>}
 */
async function workOut(question) {
  const answer = await begin();
  try {
    return JSON.parse(answer(JSON.stringify(question)));
  } catch (error) {
    // An image holds no files, so a late import fails in it: once, it is replaced.
    if (!isRestored) throw error;
    isRestored = false;
    running = startAnew();
    return workOut(question);
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
