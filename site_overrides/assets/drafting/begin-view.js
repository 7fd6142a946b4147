// How a draft begins: as a new page of some kind, as a pasted one, or from a page of the manual.

import { el } from "../cards/kit/dom.js";
import { fileName, matching, wrongFile } from "./pieces.js";
import { allDrafts, begin } from "./store.js";

/** @import { App, View } from "./app.js" */
/** @import { Kind, Manual } from "./types.js" */

/** Pages shown before a word narrows them down. */
const SHOWN = 40;

const PASTE = "paste";

/**
 * @param {App} app
 * @returns {Promise<View>}
 */
export async function newView(app) {
  const manual = await app.manual();
  const kind = el(
    "select",
    { id: "draft-kind" },
    ...manual.kinds.map((each) => el("option", { value: each.kind }, each.title)),
    el("option", { value: PASTE }, "Empty: I paste the text"),
  );
  const title = el("input", { id: "draft-title", type: "text", autocomplete: "off", "aria-describedby": "draft-title-help" });
  const file = el("input", {
    id: "draft-file", type: "text", autocomplete: "off", autocapitalize: "none", spellcheck: "false",
    "aria-describedby": "draft-file-help draft-file-error",
  }); // prettier-ignore
  const error = el("p", { class: "uh-field__error", id: "draft-file-error", role: "alert" });
  const chosen = () => manual.kinds.find((each) => each.kind === kind.value) ?? null;
  let isOwnName = false;
  const suggest = () => {
    if (!isOwnName) file.value = suggestion(chosen(), title.value);
  };
  title.addEventListener("input", suggest);
  kind.addEventListener("change", suggest);
  file.addEventListener("input", () => (isOwnName = file.value !== ""));
  const submit = async (/** @type {Event} */ event) => {
    event.preventDefault();
    const path = file.value.trim();
    error.textContent = path === "" ? "No file name is entered." : wrongFile(path) || (await takenBy(manual, path));
    file.toggleAttribute("aria-invalid", error.textContent !== "");
    if (error.textContent) return file.focus();
    const draft = await begin({ file: path, text: textOf(chosen(), title.value), basis: null });
    app.go(`#draft/${draft.id}`);
  };
  const node = el(
    "div",
    { class: "uh-desk__list" },
    el("p", {}, el("a", { href: "#" }, "All drafts")),
    el("h2", { tabindex: -1 }, "A new page"),
    app.warningNode(),
    el(
      "form",
      { onsubmit: (/** @type {Event} */ event) => void submit(event).catch((wrong) => (error.textContent = wrong.message)), novalidate: true },
      field("draft-kind", "Kind of page", kind),
      field("draft-title", "Title", title, "As the shop says it, such as Set the front band."),
      field("draft-file", "File in the manual’s folder", file, "It names the page, and other pages refer to it by this name.", error),
      el("p", {}, el("button", { class: "uh-button", type: "submit" }, "Begin")),
    ),
  );
  return { node };
}

/**
 * @param {App} app
 * @returns {Promise<View>}
 */
export async function changeView(app) {
  const manual = await app.manual();
  const pages = Object.entries(manual.pages).map(([file, text]) => ({ scheme: "", id: file, title: titleIn(text) }));
  const list = el("ul", { class: "uh-contents" });
  const more = el("p", { role: "status" });
  const words = el("input", { id: "draft-words", type: "search", autocomplete: "off", autocapitalize: "none" });
  const show = () => {
    const found = matching(pages, words.value, "");
    list.replaceChildren(...found.slice(0, SHOWN).map((page) => choice(app, page, manual.pages[page.id] ?? "")));
    more.textContent = found.length > SHOWN ? `${found.length - SHOWN} more: write a word of the title.` : found.length ? "" : "No page has these words.";
  };
  words.addEventListener("input", show);
  show();
  const node = el(
    "div",
    { class: "uh-desk__list" },
    el("p", {}, el("a", { href: "#" }, "All drafts")),
    el("h2", { tabindex: -1 }, "Change a page"),
    app.warningNode(),
    field("draft-words", "Find the page", words),
    list,
    more,
  );
  return { node };
}

/**
 * @param {App} app
 * @param {{id: string, title: string}} page
 * @param {string} text
 */
function choice(app, { id, title }, text) {
  const open = async () => {
    const known = (await allDrafts()).find((draft) => draft.file === id && draft.removed === "");
    const draft = known ?? (await begin({ file: id, text, basis: text }));
    app.go(`#draft/${draft.id}`);
  };
  return el("li", {}, el("button", { class: "uh-desk__choice", type: "button", onclick: () => void open() }, title || id), el("p", {}, id));
}

/**
 * Why the name cannot be used, or "".
 *
 * @param {Manual} manual
 * @param {string} file
 */
async function takenBy(manual, file) {
  if (file in manual.pages) return `The manual has ${file} already. Choose “Change a page”, or another name.`;
  const draft = (await allDrafts()).find((each) => each.file === file && each.removed === "");
  return draft ? `A draft of ${file} is on this device already. Go on with that, or choose another name.` : "";
}

/**
 * @param {Kind | null} kind
 * @param {string} title
 */
function suggestion(kind, title) {
  const name = fileName(title);
  if (name === "") return "";
  return kind?.folder ? `${kind.folder}/${name}.md` : `${name}.md`;
}

/**
 * @param {Kind | null} kind
 * @param {string} title
 */
function textOf(kind, title) {
  if (!kind) return "";
  const words = title.trim();
  const plain = /^[\p{L}\p{N}][^:#]*$/u.test(words) ? words : JSON.stringify(words);
  return words ? kind.text.replace(/^title:.*$/m, () => `title: ${plain}`) : kind.text;
}

/** @param {string} text */
const titleIn = (text) => (/^title:[ \t]*(.+)$/m.exec(text.slice(0, 4000))?.[1] ?? "").replace(/^(["'])(.*)\1\s*$/, "$2");

/**
 * @param {string} id
 * @param {string} label
 * @param {HTMLElement} control
 * @param {string} [help]
 * @param {HTMLElement} [error]
 */
function field(id, label, control, help = "", error) {
  return el(
    "div",
    { class: "uh-field" },
    el("label", { for: id }, label),
    control,
    help ? el("p", { class: "uh-field__help", id: `${id}-help` }, help) : null,
    error ?? null,
  );
}
