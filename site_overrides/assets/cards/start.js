// The job cards' page: which view the address asks for, after the storage has been looked at.

import { App, notice } from "./app.js";
import { INITIALS, askForm } from "./kit/ask.js";
import { el } from "./kit/dom.js";
import { listView } from "./list-view.js";
import { checkStorage } from "./record/preflight.js";
import { shopExchange } from "./sync/shop-exchange.js";
import { broughtBack } from "./record/put-back.js";
import { remembered } from "./record/store.js";
import { keepAwake } from "./kit/wake.js";
import { CARD_VIEWS, OWN_VIEWS, brought, workAt } from "./views.js";

/** @import { View } from "./app.js" */

/** Views in which nothing is signed. */
const NEED_NO_INITIALS = new Set(["take-in", "sync"]);

/** @param {HTMLElement} root */
async function start(root) {
  root.classList.add("uh-card");
  root.replaceChildren(el("p", { role: "status" }, "Looking at this phone’s storage."));
  const { stop, warn, tab } = await checkStorage();
  if (stop) return refuse(root, stop);
  const app = new App(root);
  app.warning = { warn: lossWords(broughtBack()) || warn, tab };
  app.initials = String((await remembered("initials")) ?? "");
  let turn = 0;
  const route = async () => {
    const mine = (turn += 1);
    const view = await viewFor(app).catch((error) => troubleView(error.message));
    if (mine !== turn) return; // the address has changed again meanwhile
    app.show(view);
    keepAwake(view.awake ?? false);
    if (location.hash) arrive(view.node);
  };
  window.addEventListener("hashchange", () => void route());
  await route();
  root.dataset.ready = "";
  void shopExchange.begin((id) => void app.sessions.get(id)?.load().catch(() => {})).catch(() => {});
}

/**
 * @param {number} entries that the browser had lost
 * @returns {string} "" for none
 */
function lossWords(entries) {
  if (entries === 0) return "";
  const those = entries === 1 ? "One entry is" : `${entries} entries are`;
  return `This phone’s browser had lost its records. ${those} back, from the second copy.`;
}

/**
 * The new view fills the screen, and reading aloud goes on at its heading.
 *
 * @param {HTMLElement} node
 */
function arrive(node) {
  const heading = /** @type {HTMLElement|null} */ (node.querySelector('h2[tabindex="-1"]'));
  heading?.focus({ preventScroll: true });
  node.scrollIntoView();
}

/**
 * @param {App} app
 * @returns {Promise<View>}
 */
async function viewFor(app) {
  const [place, id = "", part = ""] = location.hash.slice(1).split("/");
  if (place === "") return listView(app);
  if (app.initials === "" && !NEED_NO_INITIALS.has(place)) return initialsView(app);
  if (Object.hasOwn(OWN_VIEWS, place)) return (await brought(OWN_VIEWS[place]))(app);
  const session = await app.session(id);
  const card = session.state;
  if (place !== "card" || !card) {
    return troubleView("This card is not on this phone. Look at the list of cards.");
  }
  const isNew = card.jobs.length === 0 && session.waiting.size === 0;
  const first = card.faults.size > 0 ? "fault" : "add";
  const name = isNew && !Object.hasOwn(CARD_VIEWS, part) ? first : part;
  const view = Object.hasOwn(CARD_VIEWS, name)
    ? await brought(CARD_VIEWS[name])
    : await workAt(/^\d+$/.test(part) ? Number(part) - 1 : null);
  return view(app, session, card);
}

/**
 * @param {App} app
 * @returns {View}
 */
function initialsView(app) {
  const answer = async (/** @type {string} */ entry) => {
    await app.keepInitials(entry);
    app.go(location.hash);
  };
  const form = askForm(INITIALS, {
    answer: (entry) => void answer(entry).catch((error) => node.append(notice(error.message))),
    away: () => app.go("#"),
  });
  const node = el("div", {}, el("h2", { tabindex: -1 }, "Who are you?"), form);
  return { node };
}

/**
 * @param {string} words
 * @returns {View}
 */
function troubleView(words) {
  const back = el("a", { class: "uh-button", href: "#" }, "All cards");
  return { node: el("div", {}, notice(words), el("p", {}, back)) };
}

/**
 * @param {HTMLElement} root
 * @param {string} words
 */
function refuse(root, words) {
  const again = el("button", { class: "uh-button", type: "button" }, "Try again");
  again.addEventListener("click", () => void start(root));
  root.replaceChildren(notice(`Do not start work on a card here. ${words}`, again));
  root.dataset.ready = "";
}

const root = document.querySelector("#cards");
if (root instanceof HTMLElement) void start(root);
