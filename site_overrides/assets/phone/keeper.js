/** Has the runtime stored or checked on a thread of its own, which ends with the answer. */

/** @typedef {import("./runtime-store.js").Bytes} Bytes */
/** @typedef {Bytes & {version: string}} RuntimeState */
/** @typedef {{state: RuntimeState, store: RuntimeState, check: number}} Results */

/**
 * @template {keyof Results} Ask
 * @param {Ask} ask look what is stored; store what is missing; drop what is damaged and say how many
 * @param {(bytes: Bytes) => void} [onProgress]
 * @returns {Promise<Results[Ask]>}
 */
export function keeper(ask, onProgress = () => {}) {
  return new Promise((resolve, reject) => {
    const done = new AbortController();
    /** @type {Worker} */
    let worker;
    const end = () => {
      worker.terminate();
      done.abort();
    };
    /** @param {{name: string, message: string}} failure */
    const fail = ({ name, message }) => {
      end();
      reject(Object.assign(new Error(message), { name }));
    };
    const begin = () => {
      worker = new Worker(new URL("./keeper-worker.js", import.meta.url), { type: "module", name: "keeper" });
      worker.addEventListener("message", ({ data }) => {
        if ("progress" in data) onProgress(data.progress);
        else if ("failure" in data) fail(data.failure);
        else {
          end();
          resolve(data.result);
        }
      });
      worker.addEventListener("error", () => fail({ name: "TypeError", message: "its program did not load" }));
      worker.postMessage(ask);
    };
    // A page that is left lets go of lock and line, or "back" has to load it anew; what is stored so far counts.
    window.addEventListener("pagehide", () => worker.terminate(), { signal: done.signal });
    window.addEventListener("pageshow", ({ persisted }) => persisted && begin(), { signal: done.signal });
    begin();
  });
}
