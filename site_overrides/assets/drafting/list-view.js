// The drafts on this device, and the ways to begin one.

import { timeWords } from "../cards/app.js";
import { el } from "../cards/kit/dom.js";
import { allDrafts, store } from "./store.js";

/** @import { App, View } from "./app.js" */
/** @import { Draft } from "./types.js" */

/**
 * @param {App} app
 * @returns {Promise<View>}
 */
export async function listView(app) {
  const drafts = await allDrafts();
  const here = drafts.filter(({ removed }) => removed === "");
  const removed = drafts.filter(({ removed }) => removed !== "");
  const node = el(
    "div",
    { class: "uh-desk__list" },
    app.warningNode(),
    el(
      "p",
      { class: "uh-desk__ways" },
      el("a", { class: "uh-button", href: "#new" }, "Write a new page"),
      el("a", { class: "uh-button uh-button--plain", href: "#change" }, "Change a page"),
    ),
    here.length === 0 ? el("p", {}, "No drafts on this device yet. Begin a new page, or change one of the manual.") : null,
    ...group("Drafts on this device", here, entry),
    ...group("Deleted drafts", removed, (draft) => removedEntry(app, draft)),
  );
  return { node };
}

/**
 * @param {string} title
 * @param {Draft[]} drafts
 * @param {(draft: Draft) => HTMLElement} write
 */
function group(title, drafts, write) {
  if (drafts.length === 0) return [];
  return [el("h2", {}, title), el("ul", { class: "uh-contents" }, ...drafts.map(write))];
}

/** @param {Draft} draft */
function entry(draft) {
  return el(
    "li",
    {},
    el("a", { href: `#draft/${draft.id}` }, titleOf(draft)),
    el("p", {}, draft.file),
    el("p", { class: "uh-facts" }, `${draft.basis === null ? "New page" : "Change of a page"}. Stored ${timeWords(draft.changed)}.`),
  );
}

/**
 * @param {App} app
 * @param {Draft} draft
 */
function removedEntry(app, draft) {
  const back = async () => {
    await store({ id: draft.id, change: crypto.randomUUID(), count: draft.count, to: { removed: "" } });
    app.go("#");
  };
  return el(
    "li",
    {},
    el("p", {}, titleOf(draft), `, ${draft.file}`),
    el("p", { class: "uh-facts" }, `Deleted ${timeWords(draft.removed)}.`),
    el("button", { class: "uh-button uh-button--plain", type: "button", onclick: () => void back() }, "Bring back"),
  );
}

/**
 * What the draft's own text calls it.
 *
 * @param {Draft} draft
 */
export function titleOf({ text, file }) {
  const title = /^title:[ \t]*(.+)$/m.exec(text.slice(0, 4000))?.[1]?.replace(/^["']|["']$/g, "").trim();
  return title || (file.split("/").at(-1) ?? file).replace(/\.md$/, "");
}
