// The job cards' page: which view the address asks for, after the storage has been looked at.

import { App, notice } from "./app.js";
import { INITIALS, askForm } from "./kit/ask.js";
import { el } from "./kit/dom.js";
import { listView } from "./list-view.js";
import { whyNot } from "./record/preflight.js";
import { shopExchange } from "./sync/shop-exchange.js";
import { remembered } from "./record/store.js";
import { cardsInBrief, keepInBrief } from "./record/summaries.js";
import { keepAwake } from "./kit/wake.js";
import { CARD_VIEWS, OWN_VIEWS, brought, workAt } from "./views.js";
import { storageWord } from "./warning-view.js";

/** @import { View } from "./app.js" */

/** Views in which nothing is signed. */
const NEED_NO_INITIALS = new Set(["take-in", "sync"]);

/** ms; a page that nobody looks at is never painted. */
const HIDDEN = 1000;

/**
 * Nothing is shown before the storage has been looked at; what will be shown is read meanwhile.
 *
 * @param {HTMLElement} root
 * @param {App} [app]
 */
async function start(root, app = new App(root, keepInBrief)) {
  root.classList.add("uh-card");
  root.replaceChildren(el("p", { role: "status" }, "Looking at this phone’s storage."));
  const initials = remembered("initials");
  initials.catch(() => {}); // where nothing can be read, that is said
  readAhead(app);
  const stop = await whyNot();
  if (stop) return refuse(root, stop, app);
  app.initials = String((await initials) ?? "");
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
  app.ahead.clear();
  root.dataset.ready = "";
  await painted();
  begin(app);
}

/**
 * What a view need not wait for.
 *
 * @param {App} app
 */
function begin(app) {
  void storageWord(app).catch(() => {});
  void shopExchange.begin((id) => void app.sessions.get(id)?.load().catch(() => {})).catch(() => {});
}

/** @param {App} app */
function readAhead(app) {
  const { place, id, part } = address();
  app.word = undefined;
  if (place === "") {
    app.readAhead("", cardsInBrief);
    storageWord(app).catch(() => {});
  }
  if (place !== "card") return;
  app.readAhead(id, () => app.session(id));
  void cardView(part).catch(() => {});
}

/** Until what is shown is on the screen, if anybody looks at it. */
function painted() {
  return new Promise((done) => {
    requestAnimationFrame(() => setTimeout(done));
    setTimeout(done, HIDDEN);
  });
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
  const { place, id, part } = address();
  if (place === "") return listView(app);
  if (app.initials === "" && !NEED_NO_INITIALS.has(place)) return initialsView(app);
  if (Object.hasOwn(OWN_VIEWS, place)) return (await brought(OWN_VIEWS[place]))(app);
  const session = await app.readOnce(id, () => app.session(id));
  const card = session.state;
  if (place !== "card" || !card) {
    return troubleView("This card is not on this phone. Look at the list of cards.");
  }
  const isNew = card.jobs.length === 0 && session.waiting.size === 0;
  const first = card.faults.size > 0 ? "fault" : "add";
  const name = isNew && !Object.hasOwn(CARD_VIEWS, part) ? first : part;
  return (await cardView(name))(app, session, card);
}

function address() {
  const [place, id = "", part = ""] = location.hash.slice(1).split("/");
  return { place, id, part };
}

/** @param {string} name of a view, or the step in hand */
function cardView(name) {
  if (Object.hasOwn(CARD_VIEWS, name)) return brought(CARD_VIEWS[name]);
  return workAt(/^\d+$/.test(name) ? Number(name) - 1 : null);
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
 * @param {App} app
 */
function refuse(root, words, app) {
  const again = el("button", { class: "uh-button", type: "button" }, "Try again");
  again.addEventListener("click", () => void start(root, app));
  root.replaceChildren(notice(`Do not start work on a card here. ${words}`, again));
  root.dataset.ready = "";
}

const root = document.querySelector("#cards");

/** Until the first view, or why there is none, is shown. */
export const shown = root instanceof HTMLElement ? start(root) : Promise.resolve();
