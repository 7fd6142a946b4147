/** The thread that stores the runtime: hashing 20 MB must not hold up a page that is being read. */
import { dropDamaged, runtimeState, storeRuntime } from "./runtime-store.js";

/** Least time between two words on progress, in ms: a screen reader says each of them. */
const PAUSE = 400;

let said = 0;

/** @param {import("./runtime-store.js").Bytes} bytes */
function progress(bytes) {
  if (Date.now() - said < PAUSE) return;
  said = Date.now();
  postMessage({ progress: bytes });
}

const ACTS = {
  state: runtimeState,
  check: dropDamaged,
  store: async () => {
    await storeRuntime(progress);
    return runtimeState();
  },
};

addEventListener("message", async ({ data }) => {
  try {
    postMessage({ result: await ACTS[/** @type {keyof typeof ACTS} */ (data)]() });
  } catch (error) {
    const { name, message } = error instanceof Error ? error : new Error(String(error));
    postMessage({ failure: { name, message } });
  }
});
