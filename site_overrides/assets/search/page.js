// The search page: looks while somebody types, in a worker, from the stored index: no signal needed.
import { showAnswer } from "./results.js";

/** @typedef {import("./answer.js").Answer} Answer */

const form = /** @type {HTMLFormElement} */ (document.getElementById("search"));
const words = /** @type {HTMLInputElement} */ (document.getElementById("words"));
const PAUSE = 120; // milliseconds between two letters of a quick typist

/** @type {Worker | undefined} */
let worker;
let latest = 0;

/** Looks for what stands in the field; an answer that was overtaken by a later question is dropped. */
function look() {
  const question = words.value.trim();
  latest += 1;
  history.replaceState(null, "", question ? `?q=${encodeURIComponent(question)}` : location.pathname);
  if (!question) {
    showAnswer(undefined, "");
    return;
  }
  if (!worker) {
    worker = start();
    showAnswer(undefined, "Opening the index …");
  }
  worker.postMessage({ number: latest, url: new URL(String(form.dataset.index), location.href).href, question });
}

function start() {
  const started = new Worker(new URL("./worker.js", import.meta.url), { type: "module" });
  started.addEventListener("message", ({ data }) => {
    if (data.number !== latest) return;
    if (data.error) failed();
    else showAnswer(data.answer, words.value.trim());
  });
  started.addEventListener("error", () => {
    worker = undefined; // the next question tries afresh
    failed();
  });
  return started;
}

function failed() {
  showAnswer(undefined, "The search index could not be read. Open this page once with a connection, then it is stored.");
}

/** @type {ReturnType<typeof setTimeout> | undefined} */
let pause;
words.addEventListener("input", () => {
  clearTimeout(pause);
  pause = setTimeout(look, PAUSE);
});
form.addEventListener("submit", (event) => {
  event.preventDefault();
  clearTimeout(pause);
  look();
});

words.value = new URLSearchParams(location.search).get("q") ?? "";
if (words.value) look();
else words.focus();
