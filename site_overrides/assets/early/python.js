// On a page that calculates: Python takes longest to come up, so its thread is there by the time the page's own scripts
// ask for it. Only where the manual is stored. Over a line, what is to be read comes first.
(() => {
  const { currentScript } = document;
  if (!navigator.serviceWorker?.controller || !(currentScript instanceof HTMLScriptElement)) return;
  const url = new URL("../phone/calculator-worker.js", currentScript.src);
  const thread = new Worker(url, { type: "module", name: "calculators" });
  globalThis.earlyPython = thread;
  thread.addEventListener("error", () => (globalThis.earlyPython = undefined)); // whoever asks makes another
})();
