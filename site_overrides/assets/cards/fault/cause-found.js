// The cause that the checks found, or those left that they do not tell apart: what mends it comes onto the card, and the owner hears of it.

import { timeWords } from "../app.js";
import { el } from "../kit/dom.js";
import { findingForm } from "../steps/findings/finding-form.js";

/** @import { Told, Way } from "../../fault/types.js" */
/** @import { FaultView } from "./fault-view.js" */

/** @typedef {Told["causes"][number]} Cause */

/** Characters of a finding. */
const LONGEST = 400;

export class CauseFound {
  /** @param {FaultView} view */
  constructor(view) {
    this.view = view;
    this.place = el("div", { class: "uh-cause__place" });
  }

  /**
   * @param {HTMLElement} drawn
   * @param {Told} told
   */
  fill(drawn, told) {
    const section = drawn.querySelector("[data-mends]");
    const cause = told.causes.find(({ id }) => id === told.found);
    if (section && cause) section.replaceChildren(...this.mending(cause), ...this.telling(cause));
    if (told.ask && told.open.length > 0) drawn.querySelector(".uh-ask")?.append(this.openCauses(told));
  }

  /**
   * Causes that no check of the list tells apart: what mends one of them may show which it is.
   *
   * @private
   * @param {Told} told
   */
  openCauses(told) {
    const causes = told.causes.filter(({ id }) => told.open.includes(id));
    const items = causes.map((cause) => el("li", {}, el("h4", {}, cause.name), ...this.mending(cause), ...this.telling(cause)));
    return el("div", {}, el("p", {}, "If you can see which it is:"), el("ul", { class: "uh-cause__list" }, ...items));
  }

  /**
   * @private
   * @param {Cause} cause
   * @returns {Node[]}
   */
  mending(cause) {
    const { card, manual, ways } = this.view;
    const procedures = manual.family?.causes[cause.id]?.procedures ?? [];
    if (procedures.length === 0) return [el("p", {}, "The manual has no procedure that mends it. Ask the senior tech.")];
    const onCard = new Set(card.jobs.map(({ text }) => text.id));
    const missing = procedures.filter(({ id }) => !onCard.has(id)).map(({ id }) => id);
    const words = missing.length === procedures.length ? "Add its procedures to the card" : "Add the others to the card";
    const label = `${words}: ${cause.name}`;
    const press = { class: "uh-button", type: "button", "aria-label": label, onclick: () => void ways.add(missing) };
    const lines = procedures.map((way) => el("li", {}, this.line(way)));
    return [
      el("p", {}, "What mends it:"),
      el("ul", { class: "uh-cause__mends" }, ...lines),
      ...(missing.length > 0 && manual.index && !card.closed ? [el("p", {}, el("button", press, words))] : []),
    ];
  }

  /**
   * @private
   * @param {Way} way
   */
  line(way) {
    const isOnCard = this.view.card.jobs.some(({ text }) => text.id === way.id);
    return isOnCard ? this.view.ways.way(way) : el("span", {}, way.title);
  }

  /**
   * @private
   * @param {Cause} cause
   * @returns {Node[]}
   */
  telling(cause) {
    const { card, fault } = this.view;
    const written = card.findings.find((one) => one.cause?.fault === fault.id && one.cause.id === cause.id);
    if (written) return [el("p", { class: "uh-card__said" }, `Written down for the owner by ${written.mark.who}, ${timeWords(written.mark.at)}.`)];
    const label = `Write it down for the owner: ${cause.name}`;
    const press = { class: "uh-button uh-button--plain", type: "button", "aria-label": label, onclick: () => this.ask(cause) };
    return card.closed ? [] : [el("p", {}, el("button", press, "Write it down for the owner"))];
  }

  /**
   * A finding that says it already; the person confirms it, or writes it otherwise.
   *
   * @private
   * @param {Cause} cause
   */
  ask(cause) {
    const { fault } = this.view;
    const away = () => {
      this.place.replaceChildren();
      this.view.view.focusNext();
    };
    const answer = (/** @type {{what: string, urgency: string}} */ finding) => {
      away();
      const named = { fault: fault.id, cause: cause.id, name: cause.name, likely: cause.words };
      void this.view.store("finding", "finding", { job: "", step: 0, ...finding, ...named }, "Stored: the finding.");
    };
    const what = `${cause.name}. It is behind “${fault.complaint.replace(/[.]$/, "")}”.`.slice(0, LONGEST);
    const form = findingForm({ answer, away }, { what, urgency: "this visit" });
    this.place.replaceChildren(form);
    form.querySelector("textarea")?.focus();
    form.scrollIntoView({ block: "start" });
  }
}
