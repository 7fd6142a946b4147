/** The search of a manual's file, in the contents: on the index that the file holds. */
import { Search } from "../search/answer.js";
import { showAnswer } from "../search/results.js";
import { read } from "./parts.js";

const PAUSE = 150; // milliseconds between two letters of a quick typist

/** Makes the field look for what is typed; there is none in a file without an index. */
export function startSearch() {
  const form = document.getElementById("search");
  const words = document.getElementById("asked");
  if (!form || !(words instanceof HTMLInputElement)) return;
  form.hidden = false;
  /** @type {Promise<Search> | undefined} */
  let opening;
  const look = async () => {
    const question = words.value.trim();
    if (!question) {
      showAnswer(undefined, "");
      return;
    }
    opening ??= opened();
    try {
      const search = await opening;
      if (question !== words.value.trim()) return;
      showAnswer(search.ask(question), question, leadWithin);
    } catch {
      showAnswer(undefined, "The search index could not be read: this file was not copied whole.");
    }
  };
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  let pause;
  words.addEventListener("input", () => {
    clearTimeout(pause);
    pause = setTimeout(() => void look(), PAUSE);
  });
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    clearTimeout(pause);
    void look();
  });
}

/**
 * A result leads to an address of the site; here that is a place of the file.
 * @param {HTMLAnchorElement} link
 */
function leadWithin(link) {
  const [address = "", at] = link.href.slice(new URL("./", location.href).href.length).split("#");
  const page = address.replace(/\/$/, "") || "front";
  link.href = `#${page}${at ? `.${at}` : ""}`;
}

async function opened() {
  return new Search(await read("search"));
}
