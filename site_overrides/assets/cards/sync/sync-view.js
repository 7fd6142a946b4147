// The shop exchange: what it is, what leaves the phone, how it stands, and how to start and stop it.

import { notice } from "../app.js";
import { el } from "../kit/dom.js";
import { counted } from "../record/left.js";
import { joinForm } from "./join-form.js";
import { shopExchange } from "./shop-exchange.js";
import { missingWords, stateWords, troubleWords } from "./state-words.js";

/** @import { View } from "../app.js" */
/** @import { Refused } from "./incoming.js" */

/** More single entries than this are only counted. */
const SHOWN = 10;

const GUIDE = "../writing/shop-sync/index.html";

/** @returns {View} */
export function syncView() {
  const state = el("p", { class: "uh-card__left", role: "status" });
  const trouble = el("div");
  const facts = el("div");
  const form = el("div");
  let shown = "";
  let said = "";
  const update = () => {
    const { state: now, kept } = shopExchange;
    state.textContent = stateWords(now);
    const words = troubleWords(now);
    if (words !== said) trouble.replaceChildren(...(words ? [notice(words)] : []));
    said = words;
    void showFacts(facts);
    // The form stays as it is while somebody types into it.
    const wanted = !now.joined ? "join" : now.locked || (now.trouble && !now.passes && !now.busy) ? "again" : "joined";
    if (wanted === shown || now.busy) return;
    shown = wanted;
    form.replaceChildren(...(wanted === "joined" ? acts() : [joinForm(kept, (shop, keep) => run(shopExchange.join(shop, keep)))]), ...(wanted === "again" ? [stopButton()] : []));
  };
  const run = (/** @type {Promise<void>} */ work) => void work.catch((error) => trouble.replaceChildren(notice(error.message)));
  const acts = () => [
    el("p", {}, `With ${shopExchange.kept?.address}, database ${shopExchange.kept?.database}.`),
    el("p", { class: "uh-card__answers" }, el("button", { class: "uh-button", type: "button", onclick: () => run(shopExchange.now()) }, "Exchange now"), stopButton()),
    el("p", { class: "uh-facts" }, "Stopping keeps every entry, here and on the server. The address and the password go from this phone."),
  ];
  const stopButton = () => el("button", { class: "uh-button uh-button--plain", type: "button", onclick: () => run(shopExchange.leave()) }, "Stop exchanging");
  shopExchange.watchers.add(update);
  update();
  const node = el("section", {}, el("h2", { tabindex: -1 }, "Shop exchange"), ...whatItIs(), state, trouble, facts, form, el("p", {}, el("a", { href: "#" }, "All cards")));
  return { node, leave: () => void shopExchange.watchers.delete(update) };
}

function whatItIs() {
  return [
    el("p", {}, "The phones of a shop can keep the same cards by way of a server of the shop’s own. Without it everything works on this phone, and a card file takes a card to another."),
    el(
      "p",
      {},
      el("strong", {}, "What leaves this phone: "),
      "every entry of every card on it. That is the vehicle, the complaint, ticks, readings, findings, questions, initials, times and photos. It goes to the server that is entered here and to no other place, and every phone that exchanges with that server gets all of it.",
    ),
    el("p", {}, "It is off until somebody starts it, and it runs while the job cards are open. Nothing else in this manual sends anything anywhere. ", el("a", { href: GUIDE }, "How a shop sets it up")),
  ];
}

/** @param {HTMLElement} facts */
async function showFacts(facts) {
  const told = await shopExchange.told().catch(() => []);
  const missing = missingWords(shopExchange.state);
  const lines = [...(missing ? [el("p", {}, missing)] : []), ...toldLines(told)];
  if (facts.textContent !== lines.map(({ textContent }) => textContent).join("")) facts.replaceChildren(...lines);
}

/** @param {Refused[]} told */
function toldLines(told) {
  if (told.length === 0) return [];
  const sorted = [...told].sort((a, b) => (a.id < b.id ? -1 : 1));
  const more = told.length - SHOWN;
  return [
    el("h3", {}, "To look at"),
    el("ul", {}, ...sorted.slice(0, SHOWN).map(({ wrong }) => el("li", {}, wrong))),
    ...(more > 0 ? [el("p", {}, `And ${counted(more, "more entry", "more entries")}.`)] : []),
  ];
}

/** One line for the list of cards. */
export function exchangeLine() {
  const words = el("span");
  const update = () => {
    const { state } = shopExchange;
    const trouble = state.trouble && !state.passes ? ` ${state.trouble}` : "";
    words.textContent = state.joined ? ` ${stateWords(state)}${trouble}` : "";
  };
  update();
  shopExchange.watchers.add(update);
  const line = el("p", { class: "uh-facts" }, el("a", { href: "#sync" }, "Shop exchange"), words);
  return { line, leave: () => void shopExchange.watchers.delete(update) };
}
