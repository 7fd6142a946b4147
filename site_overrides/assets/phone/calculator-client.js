/** Asks the calculators' thread; a new thread is made where the old one failed. */

/** @typedef {import("./calculator-worker.js").Result} Result */
/** @typedef {import("./calculator-worker.js").Reply} Reply */
/** @typedef {import("./calculator-worker.js").Question} Question */
/** @typedef {{resolve: (result: any) => void, reject: (reason: Error) => void}} Asked */

/** The site's own thread: the one that the page began with, once, or a new one. */
function fromSite() {
  const early = globalThis.earlyPython;
  globalThis.earlyPython = undefined;
  return early ?? new Worker(new URL("./calculator-worker.js", import.meta.url), { type: "module", name: "calculators" });
}

/** The calculators' thread, and the questions that wait for it. */
export class CalculatorClient {
  /** @type {Worker | null} */
  #worker = null;
  /** @type {Map<number, Asked>} */
  #waiting = new Map();
  #last = 0;
  #made;

  /** @param {() => Worker} made makes the thread */
  constructor(made = fromSite) {
    this.#made = made;
  }

  /** Starts the thread before the first question, so that Python is up sooner. */
  start() {
    if (this.#worker) return this.#worker;
    const worker = this.#made();
    worker.addEventListener("message", ({ data }) => this.#settle(data));
    worker.addEventListener("error", (event) => this.#fail(event.message || "its program did not load"));
    this.#worker = worker;
    worker.postMessage("begin");
    return worker;
  }

  /**
   * Works out one answer. Rejects with a reason in words where the thread failed.
   * @param {string} name
   * @param {Record<string, string>} entries
   * @returns {Promise<Result>}
   */
  ask(name, entries) {
    return this.put({ name, entries });
  }

  /**
   * Puts any question to the thread. Rejects likewise.
   * @param {Question} question
   * @returns {Promise<any>} as the question's door answers it
   */
  put(question) {
    const id = ++this.#last;
    return new Promise((resolve, reject) => {
      this.#waiting.set(id, { resolve, reject });
      this.start().postMessage({ id, question });
    });
  }

  /** @param {Reply} reply */
  #settle(reply) {
    if ("failure" in reply) {
      this.#fail(reply.failure);
      return;
    }
    this.#waiting.get(reply.id)?.resolve(reply.result);
    this.#waiting.delete(reply.id);
  }

  /** @param {string} reason */
  #fail(reason) {
    this.#worker?.terminate();
    this.#worker = null;
    for (const asked of this.#waiting.values()) asked.reject(new Error(reason));
    this.#waiting.clear();
  }
}

/** The page's own. */
export const calculators = new CalculatorClient();
