// Search over the whole manual, in a worker, from the stored index: works without a signal.
import { askWorker } from "./search_worker.js";
import { showResults } from "./search_results.js";

const form = /** @type {HTMLFormElement} */ (document.getElementById("search"));
const words = /** @type {HTMLInputElement} */ (document.getElementById("words"));
const found = /** @type {HTMLElement} */ (document.getElementById("found"));
const list = /** @type {HTMLElement} */ (document.getElementById("results"));
const ask = askWorker(String(form.dataset.worker), String(form.dataset.index));

let latest = 0;

/** Looks for what stands in the field; an answer that was overtaken by a later question is dropped. */
async function look() {
  const question = words.value.trim();
  const mine = ++latest;
  history.replaceState(null, "", question ? `?q=${encodeURIComponent(question)}` : location.pathname);
  if (!question) {
    found.textContent = "";
    list.replaceChildren();
    return;
  }
  try {
    const groups = await ask(question);
    if (mine === latest) found.textContent = showResults(list, groups, question);
  } catch {
    found.textContent =
      "The search index could not be read. Open this page once with a connection, then it is stored.";
  }
}

/** @type {ReturnType<typeof setTimeout> | undefined} */
let pause;
words.addEventListener("input", () => {
  clearTimeout(pause);
  pause = setTimeout(look, 150);
});
form.addEventListener("submit", (event) => {
  event.preventDefault();
  clearTimeout(pause);
  look();
});

words.value = new URLSearchParams(location.search).get("q") ?? "";
if (words.value) look();
else words.focus();
