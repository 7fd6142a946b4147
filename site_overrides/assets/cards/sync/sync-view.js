// The shop exchange: how it stands, what leaves the phone, and how to start and stop it.

import { notice } from "../app.js";
import { el } from "../kit/dom.js";
import { joinForm } from "./join-form.js";
import { shopExchange } from "./shop-exchange.js";
import { missingWords, stateWords, troubleWords } from "./state-words.js";
import { toldLines } from "./told-lines.js";

export class SyncView {
  #state = el("p", { class: "uh-card__left", role: "status" });
  #trouble = el("div");
  #facts = el("div");
  #acts = el("div");
  #form = el("div");
  #shown = "";
  #said = "";

  constructor() {
    const title = el("h2", { tabindex: -1 }, "Shop exchange");
    const back = el("p", {}, el("a", { href: "#" }, "All cards"));
    const now = [this.#state, this.#trouble, this.#facts, this.#acts];
    this.node = el("section", { class: "uh-exchange" }, title, ...now, ...whatItIs(), this.#form, back);
    shopExchange.watchers.add(this.update);
    this.update();
  }

  leave() {
    shopExchange.watchers.delete(this.update);
  }

  update = () => {
    const { state } = shopExchange;
    this.#state.textContent = stateWords(state);
    this.#say(troubleWords(state));
    void this.#showFacts();
    const stuck = state.trouble !== "" && !state.passes;
    const wanted = !state.joined ? "off" : state.locked || stuck ? "asks" : "on";
    // The form stays as it is while somebody types into it.
    if (wanted !== this.#shown && !state.busy) this.#show(wanted);
  };

  /** @param {"off"|"asks"|"on"} wanted */
  #show(wanted) {
    this.#shown = wanted;
    const join = joinForm(shopExchange.kept, (shop, keep) => this.#run(shopExchange.join(shop, keep)));
    this.#form.replaceChildren(...(wanted === "on" ? [] : [join]));
    this.#acts.replaceChildren(...(wanted === "off" ? [] : this.#actsNow(wanted === "on")));
  }

  /** @param {boolean} works */
  #actsNow(works) {
    const { address, database } = shopExchange.kept ?? {};
    const again = () => this.#run(shopExchange.now());
    const stop = () => this.#run(shopExchange.leave());
    return [
      el("p", {}, `With ${address}, database ${database}.`),
      el(
        "p",
        { class: "uh-card__answers" },
        works && el("button", { class: "uh-button", type: "button", onclick: again }, "Exchange now"),
        el("button", { class: "uh-button uh-button--plain", type: "button", onclick: stop }, "Stop exchanging"),
      ),
      el(
        "p",
        { class: "uh-facts" },
        "Stopping keeps every entry, here and on the server. The address and the password go from this phone.",
      ),
    ];
  }

  /** @param {Promise<void>} work */
  #run(work) {
    void work.catch((error) => this.#say(error.message));
  }

  /** @param {string} words */
  #say(words) {
    if (words !== this.#said) this.#trouble.replaceChildren(...(words ? [notice(words)] : []));
    this.#said = words;
  }

  async #showFacts() {
    const told = await shopExchange.told().catch(() => []);
    const missing = missingWords(shopExchange.state);
    const lines = [...(missing ? [el("p", {}, missing)] : []), ...toldLines(told)];
    const words = lines.map(({ textContent }) => textContent).join("");
    if (this.#facts.textContent !== words) this.#facts.replaceChildren(...lines);
  }
}

function whatItIs() {
  const guide = document.querySelector("#cards")?.getAttribute("data-shop-guide");
  return [
    el(
      "p",
      {},
      "The phones of a shop can keep the same cards by way of a server of the shop’s own. Without it everything works on this phone, and a card file takes a card to another.",
    ),
    el(
      "p",
      {},
      el("strong", {}, "What leaves this phone: "),
      "every entry of every card on it. That is the vehicle, the complaint, ticks, readings, findings, questions, initials, times and photos. It goes to the server that is entered here and to no other place, and every phone that exchanges with that server gets all of it.",
    ),
    el(
      "p",
      {},
      "It is off until somebody starts it, and it runs while the job cards are open. Nothing else in this manual sends anything anywhere. ",
      guide ? el("a", { href: guide }, "How a shop sets it up") : null,
    ),
  ];
}
