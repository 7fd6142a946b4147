// The theme's search worker speaks in numbered messages; this is the only place that knows them.
const SETUP = 0;
const READY = 1;
const QUERY = 2;
const RESULT = 3;

/**
 * @typedef {{location: string, title: string, text: string}} Found
 * @param {string} workerUrl
 * @param {string} indexUrl
 * @returns {(question: string) => Promise<Found[][]>} Each group: a page, then the sections of it that match.
 */
export function askWorker(workerUrl, indexUrl) {
  /** @type {Promise<Worker> | undefined} */
  let ready;
  /** @type {Promise<unknown>} */
  let before = Promise.resolve();

  /** @param {string} question */
  async function ask(question) {
    ready ??= start(workerUrl, indexUrl);
    try {
      const worker = await ready;
      worker.postMessage({ type: QUERY, data: question });
      return (await answer(worker, RESULT)).items;
    } catch (error) {
      ready = undefined; // the next question tries afresh
      throw error;
    }
  }

  // One at a time: answers carry no mark that says which question they belong to.
  return (question) => {
    const answered = before.then(() => ask(question));
    before = answered.catch(() => {});
    return answered;
  };
}

/**
 * @param {string} workerUrl
 * @param {string} indexUrl
 */
async function start(workerUrl, indexUrl) {
  const response = await fetch(indexUrl);
  if (!response.ok) throw new Error(`${indexUrl}: ${response.status}`);
  const index = await response.json();
  const worker = new Worker(workerUrl);
  worker.postMessage({ type: SETUP, data: { ...index, options: { suggest: false } } });
  await answer(worker, READY);
  return worker;
}

/**
 * @param {Worker} worker
 * @param {number} type
 * @returns {Promise<any>}
 */
function answer(worker, type) {
  return new Promise((resolve, reject) => {
    worker.addEventListener("error", reject, { once: true });
    worker.addEventListener("message", function listen({ data }) {
      if (data.type !== type) return;
      worker.removeEventListener("message", listen);
      worker.removeEventListener("error", reject);
      resolve(data.data);
    });
  });
}
