/** Parts long work into tasks, so that a tap is not kept waiting. */

/** @typedef {{yield?: () => Promise<void>}} Scheduler */

/**
 * Kept in a task of its own, once a tap that waits was dealt with.
 * @returns {Promise<void>}
 */
export function nextTask() {
  const { scheduler } = /** @type {{scheduler?: Scheduler}} */ (globalThis);
  if (scheduler?.yield) return scheduler.yield();
  const { port1, port2 } = new MessageChannel(); // setTimeout would wait 4 ms
  return new Promise((done) => {
    port1.onmessage = () => {
      port1.close();
      done();
    };
    port2.postMessage(null);
  });
}
