// Reads the index once and answers questions beside the page, so that typing never waits.
import { Search } from "./answer.js";

/** @type {Promise<Search> | undefined} */
let opened;

/** @param {string} url */
async function open(url) {
  const response = await fetch(url);
  if (!response.ok) throw new Error(`${url}: ${response.status}`);
  return new Search(await response.json());
}

addEventListener("message", async ({ data: { number, url, question } }) => {
  try {
    opened ??= open(url);
    const search = await opened;
    postMessage({ number, answer: search.ask(question) });
  } catch (error) {
    opened = undefined; // the next question tries afresh
    postMessage({ number, error: String(error) });
  }
});
