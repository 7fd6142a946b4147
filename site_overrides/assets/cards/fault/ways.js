// How a check or a mend is done: the procedure opens where it is on the card, or comes onto it in one tap;
// a calculator opens with the vehicle of the card.

import { notice } from "../app.js";
import { el } from "../kit/dom.js";
import { calculatorAddress } from "../link/to-calculator.js";
import { addToCard } from "../plan/add-to-card.js";
import { choose } from "../plan/choose.js";
import { siteRoot } from "../plan/manual.js";
import { placeOf } from "../record/left.js";
import { decidersOf } from "./counted.js";
import { idWords } from "./words.js";

/** @import { Way } from "../../fault/types.js" */
/** @import { FaultView } from "./fault-view.js" */

export class Ways {
  /** @param {FaultView} view */
  constructor(view) {
    this.view = view;
  }

  /**
   * Puts the ways to each check into its place.
   *
   * @param {HTMLElement} drawn
   */
  fill(drawn) {
    const { family } = this.view.manual;
    for (const place of drawn.querySelectorAll("[data-how]")) {
      const check = place.getAttribute("data-how") ?? "";
      const procedures = family?.checks[check]?.procedures ?? [];
      place.append(...procedures.map((way) => this.way(way)), ...this.calculators(check));
    }
  }

  /** @param {Way} way */
  way({ id, title, url }) {
    const { card } = this.view;
    const job = card.jobs.find(({ text }) => text.id === id);
    const href = job ? `#card/${card.id}/${placeOf(card, job)}` : new URL(url, siteRoot()).href;
    const canAdd = !job && !card.closed && this.view.manual.index?.procedures.some((one) => one.id === id);
    if (!canAdd) return el("p", { class: "uh-cause__way" }, el("a", { href }, job ? `Open on the card: ${title}` : title));
    const press = { class: "uh-button uh-button--plain", type: "button", onclick: () => void this.add([id]) };
    return el("p", { class: "uh-cause__way" }, el("button", press, `Put on the card: ${title}`));
  }

  /**
   * Procedures onto the card with what goes along, each in its place in the order of the work.
   *
   * @param {string[]} ids
   */
  async add(ids) {
    const { app, session, card, manual } = this.view;
    if (!manual.index || session.waiting.size > 0) return;
    const onCard = new Set(card.jobs.map(({ text }) => text.id));
    const sets = { chosen: new Set(ids), left: new Set(), onCard };
    const { list } = choose(manual.index, card.vehicle.family, sets);
    this.view.say("Being stored.");
    try {
      const stored = await addToCard(app, session, card, manual.index, list);
      this.view.say(stored ? `On the card: ${list.map(({ title }) => title).join("; ")}.` : "");
    } catch (error) {
      this.view.said.replaceChildren(notice(error instanceof Error ? error.message : String(error)));
    }
  }

  /**
   * @private
   * @param {string} check
   */
  calculators(check) {
    const { card, fault, manual } = this.view;
    return decidersOf(manual.family, check).flatMap((one) => {
      if (one.kind !== "calculator") return [];
      const address = new URL(`calculators/${one.calculator}/`, siteRoot()).href;
      const href = calculatorAddress(address, card, `fault/${fault.id}`);
      return [el("p", { class: "uh-cause__way" }, "Calculate: ", el("a", { href }, one.title || idWords(one.calculator)))];
    });
  }
}
