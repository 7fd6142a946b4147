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
  const worker = new Worker(new URL("./keeper-worker.js", import.meta.url), { type: "module", name: "keeper" });
  return new Promise((resolve, reject) => {
    /** @param {{name: string, message: string}} failure */
    const fail = ({ name, message }) => {
      worker.terminate();
      reject(Object.assign(new Error(message), { name }));
    };
    worker.addEventListener("message", ({ data }) => {
      if ("progress" in data) onProgress(data.progress);
      else if ("failure" in data) fail(data.failure);
      else {
        worker.terminate();
        resolve(data.result);
      }
    });
    worker.addEventListener("error", () => fail({ name: "TypeError", message: "its program did not load" }));
    worker.postMessage(ask);
  });
}
