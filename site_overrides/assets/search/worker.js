// Reads the index once and answers questions beside the page, so that typing never waits.
import { Search } from "./answer.js";

/** @type {Promise<Search> | undefined} */
let opened;
/** @type {{number: number, url: string, question: string} | undefined} */
let latest;

/** @param {string} url */
async function open(url) {
  const response = await fetch(url);
  if (!response.ok) throw new Error(`${url}: ${response.status}`);
  return new Search(await response.json());
}

/** Answers the latest question; those that were overtaken while the index was opened or another answered are dropped. */
async function answer() {
  if (!latest) return;
  const { number, url, question } = latest;
  try {
    opened ??= open(url);
    const search = await opened;
    if (number !== latest?.number) return;
    postMessage({ number, answer: search.ask(question) });
  } catch (error) {
    opened = undefined; // the next question tries afresh
    postMessage({ number, error: String(error) });
  }
}

addEventListener("message", ({ data }) => {
  latest = data;
  setTimeout(answer); // after every question that waits already
});
