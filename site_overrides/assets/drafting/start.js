// The drafting page: which view the address asks for, after the storage has been looked at.

import { notice } from "../cards/app.js";
import { el } from "../cards/kit/dom.js";
import { checkStorage } from "../cards/record/preflight.js";
import { App } from "./app.js";
import { changeView, newView } from "./begin-view.js";
import { listView } from "./list-view.js";
import { storeLeft } from "./saver.js";
import { remember, remembered } from "./store.js";
import { writeView } from "./write-view.js";

/** @import { View } from "./app.js" */

const WORDS = {
  things: "drafts",
  start: "begin a draft",
  copy: "save each page as a file when you stop",
};

/** @param {HTMLElement} root */
async function start(root) {
  root.replaceChildren(el("p", { role: "status" }, "Looking at this device’s storage."));
  const { stop, warn } = await checkStorage({ remember, remembered }, WORDS);
  if (stop) return refuse(root, stop);
  await storeLeft().catch(() => {}); // Its draft is gone from this device.
  const app = new App(root);
  app.warning = warn;
  let turn = 0;
  const route = async () => {
    const mine = (turn += 1);
    const view = await viewFor(app).catch((error) => troubleView(error.message));
    if (mine !== turn) return view.leave?.(); // the address has changed again meanwhile
    app.show(view);
    if (location.hash) arrive(view.node);
  };
  window.addEventListener("hashchange", () => void route());
  await route();
  root.dataset.ready = "";
}

/**
 * @param {App} app
 * @returns {Promise<View>}
 */
function viewFor(app) {
  const [place, id = ""] = location.hash.slice(1).split("/");
  if (place === "new") return newView(app);
  if (place === "change") return changeView(app);
  if (place === "draft") return writeView(app, id);
  return listView(app);
}

/**
 * Reading aloud goes on at the new view's heading.
 *
 * @param {HTMLElement} node
 */
function arrive(node) {
  /** @type {HTMLElement | null} */
  const heading = node.querySelector('h2[tabindex="-1"]');
  heading?.focus({ preventScroll: true });
}

/**
 * @param {string} words
 * @returns {View}
 */
function troubleView(words) {
  const back = el("a", { class: "uh-button", href: "#" }, "All drafts");
  return { node: el("div", {}, notice(words), el("p", {}, back)) };
}

/**
 * @param {HTMLElement} root
 * @param {string} words
 */
function refuse(root, words) {
  const again = el("button", { class: "uh-button", type: "button" }, "Try again");
  again.addEventListener("click", () => void start(root));
  root.replaceChildren(notice(`Do not write here. ${words}`, again));
  root.dataset.ready = "";
}

const root = document.querySelector("#drafts");
if (root instanceof HTMLElement) void start(root);
