// What the events about the whole card do: vehicle, things fetched, parts told apart, the end.

import { mark, text } from "./mark.js";

/** @import { CardEvent, CardState, Vehicle } from "../../types.js" */

/** @type {Record<string, (card: CardState, event: CardEvent) => void>} */
export const CARD_EFFECTS = {
  start() {},
  undo() {},
  vehicle(card, event) {
    card.vehicle = /** @type {Vehicle} */ (event.value.vehicle);
  },
  fetch(card, event) {
    const thing = text(event, "thing");
    if (!card.fetched.has(thing)) card.fetched.set(thing, mark(event));
  },
  identify(card, event) {
    const told = { ...mark(event), variant: text(event, "variant"), how: text(event, "how") };
    card.identified.set(text(event, "part"), told);
  },
  close(card, event) {
    card.closed ??= { ...mark(event), reason: String(event.value.reason ?? "") };
  },
};
