/** Asks the desk's thread, which is ended where it takes too long and begun anew at the next question. */

/** @import { Looked, Name, Shown } from "./types.js" */
/** @import { Reply } from "./desk-worker.js" */

/** Longest time in ms for one answer, once Python is up: a page of 1 MB takes a slow phone a few seconds. */
const LIMIT = 20_000;

export const TOO_LONG = "it took too long. Part the page, or take out what is not text";

/** @typedef {{resolve: (answer: any) => void, reject: (reason: Error) => void}} Asked */

export class Desk {
  /** @param {number} [limit] in ms */
  constructor(limit = LIMIT) {
    this.limit = limit;
    /** @type {Worker | null} */
    this.worker = null;
    /** @type {Map<number, Asked>} */
    this.waiting = new Map();
    this.last = 0;
    this.isReady = false;
    /** @type {ReturnType<typeof setTimeout> | undefined} */
    this.timer = undefined;
  }

  /**
   * @param {string} file
   * @param {string} text
   * @returns {Promise<Looked>}
   */
  look(file, text) {
    return this.ask({ ask: "look", file, text });
  }

  /** @returns {Promise<Shown>} the draft that was looked at last */
  page() {
    return this.ask({ ask: "page" });
  }

  /** @returns {Promise<Name[]>} what it may refer to */
  names() {
    return this.ask({ ask: "names" });
  }

  /**
   * @param {string} old
   * @param {string} now
   * @returns {Promise<string[]>} lines, each with -, + or a space before it
   */
  difference(old, now) {
    return this.ask({ ask: "difference", old, new: now });
  }

  /** Begins before the first question, so that Python is up sooner. */
  start() {
    if (this.worker) return this.worker;
    const url = new URL("./desk-worker.js", import.meta.url);
    const worker = new Worker(url, { type: "module", name: "desk" });
    worker.addEventListener("message", ({ data }) => this.heard(worker, data));
    worker.addEventListener("error", (event) => this.fail(worker, event.message || "its program did not load"));
    this.worker = worker;
    return worker;
  }

  /**
   * @private
   * @param {object} question
   * @returns {Promise<any>}
   */
  ask(question) {
    const id = ++this.last;
    return new Promise((resolve, reject) => {
      this.waiting.set(id, { resolve, reject });
      this.start().postMessage({ id, question });
      this.watch();
    });
  }

  /**
   * @private
   * @param {Worker} worker
   * @param {Reply} reply
   */
  heard(worker, reply) {
    if (worker !== this.worker) return;
    if ("ready" in reply) this.isReady = true;
    else if ("failure" in reply) return this.fail(worker, reply.failure);
    else {
      this.waiting.get(reply.id)?.resolve(reply.answer);
      this.waiting.delete(reply.id);
    }
    clearTimeout(this.timer);
    this.timer = undefined;
    this.watch();
  }

  /** Gives the answer that is being worked out its time; bringing Python up is not counted. @private */
  watch() {
    const worker = this.worker;
    if (!worker || !this.isReady || this.waiting.size === 0) return;
    this.timer ??= setTimeout(() => this.fail(worker, TOO_LONG), this.limit);
  }

  /**
   * @private
   * @param {Worker} worker
   * @param {string} reason
   */
  fail(worker, reason) {
    if (worker !== this.worker) return;
    worker.terminate();
    clearTimeout(this.timer);
    this.timer = undefined;
    this.worker = null;
    this.isReady = false;
    for (const asked of this.waiting.values()) asked.reject(new Error(reason));
    this.waiting.clear();
  }
}
