// How the shop exchange stands, in one line of the list of cards.

import { el } from "../kit/dom.js";
import { shopExchange } from "./shop-exchange.js";
import { stateWords } from "./state-words.js";

/** The line, and what ends its watch. */
export function exchangeLine() {
  const words = el("span");
  const update = () => {
    const { state } = shopExchange;
    const trouble = state.trouble && !state.passes ? ` ${state.trouble}` : "";
    words.textContent = state.joined ? `${stateWords(state)}${trouble}` : "";
  };
  update();
  shopExchange.watchers.add(update);
  const line = el("p", { class: "uh-exchange__line" }, el("a", { href: "#sync" }, "Shop exchange"), words);
  return { line, leave: () => void shopExchange.watchers.delete(update) };
}
