// Choosing procedures for a card; those that find and mend the cause of its complaint come first.

import { cardName, notice } from "../app.js";
import { el } from "../kit/dom.js";
import { addToCard } from "./add-to-card.js";
import { choose, oftenWith, timeInWords } from "./choose.js";
import { readIndex } from "./manual.js";
import { offered } from "./order.js";
import { summary } from "./summary.js";

/** @import { App, View } from "../app.js" */
/** @import { Session } from "../record/session.js" */
/** @import { CardState, Index, ProcedureEntry } from "../types.js" */

const FIRST = "Fault finding says which check comes first.";

/**
 * @param {App} app
 * @param {Session} session
 * @param {CardState} card
 * @returns {Promise<View>}
 */
export async function addView(app, session, card) {
  const chooser = new Chooser(app, session, card, await readIndex());
  const heading = el("h2", { tabindex: -1 }, "Add procedures");
  return { node: el("div", {}, heading, el("p", {}, cardName(card)), chooser.form) };
}

class Chooser {
  /**
   * @param {App} app
   * @param {Session} session
   * @param {CardState} card
   * @param {Index} index
   */
  constructor(app, session, card, index) {
    this.app = app;
    this.session = session;
    this.card = card;
    this.index = index;
    this.sets = {
      /** @type {Set<string>} */ chosen: new Set(),
      /** @type {Set<string>} */ left: new Set(),
      onCard: new Set(card.jobs.map((job) => job.text.id)),
    };
    this.trouble = el("div");
    this.outcome = el("div", { class: "uh-card__outcome" });
    this.often = el("p", { class: "uh-card__often" });
    this.add = el("button", { class: "uh-button", type: "submit" }, "Add to the card");
    this.form = this.makeForm();
    this.show();
  }

  /** @private */
  makeForm() {
    const fault = this.index.faults.find((one) => one.id === this.card.fault);
    const { checks, mends, others } = offered(this.index, this.card.vehicle.family, fault);
    return el(
      "form",
      {
        class: "uh-card__form",
        onchange: (/** @type {Event} */ event) => this.changed(event),
        onsubmit: (/** @type {Event} */ event) => this.submit(event),
      },
      fault ? el("p", {}, `For “${fault.complaint}”. `, el("a", { href: `#card/${this.card.id}/fault` }, FIRST)) : null,
      ...this.group("Its checks, as the page writes them", checks),
      ...this.group("What mends it, once it is found", mends),
      ...this.areas(others, fault ? "Other procedures" : "Procedures"),
      this.outcome,
      this.often,
      this.trouble,
      el("p", {}, this.add),
      el("p", {}, el("a", { href: `#card/${this.card.id}` }, "Back to the card")),
    );
  }

  /**
   * All the other procedures, by the part of the work they belong to.
   *
   * @private
   * @param {ProcedureEntry[]} entries
   * @param {string} title
   */
  areas(entries, title) {
    const names = [...new Set(entries.map(({ area }) => area))].sort();
    const groups = names.map((name) => {
      const own = entries.filter(({ area }) => area === name);
      const words = `${name[0].toUpperCase()}${name.slice(1)} (${own.length})`;
      return el("details", { class: "uh-more" }, el("summary", {}, words), this.choices(own));
    });
    return groups.length > 0 ? [el("h3", {}, title), ...groups] : [];
  }

  /**
   * @private
   * @param {string} title
   * @param {ProcedureEntry[]} entries
   */
  group(title, entries) {
    return entries.length > 0 ? [el("h3", {}, title), this.choices(entries)] : [];
  }

  /**
   * @private
   * @param {ProcedureEntry[]} entries
   */
  choices(entries) {
    return el("ul", { class: "uh-card__choices" }, ...entries.map((entry) => this.line(entry)));
  }

  /**
   * @private
   * @param {ProcedureEntry} entry
   */
  line(entry) {
    const has = this.sets.onCard.has(entry.id);
    const facts = `${timeInWords(entry.minutes)}${has ? " · on the card already" : ""}`;
    const words = el("span", {}, entry.title, el("br"), el("small", {}, facts));
    const box = el("input", { type: "checkbox", name: "procedure", value: entry.id, disabled: has });
    return el("li", {}, el("label", {}, box, words));
  }

  /**
   * @private
   * @param {Event} event
   */
  changed({ target }) {
    if (!(target instanceof HTMLInputElement)) return;
    const { chosen, left } = this.sets;
    const id = target.value;
    if (target.checked) left.delete(id);
    const comesAlong = this.choice.along.has(id);
    if (target.checked && !comesAlong) chosen.add(id);
    if (!target.checked && comesAlong) left.add(id);
    if (!target.checked) chosen.delete(id);
    this.show();
  }

  /** The choice as it stands. @private */
  get choice() {
    return choose(this.index, this.card.vehicle.family, this.sets);
  }

  /** Ticks what is chosen or comes along, and writes out what the card will hold. @private */
  show() {
    const choice = this.choice;
    const ids = new Set(choice.list.map(({ id }) => id));
    for (const box of this.form.querySelectorAll("input")) box.checked = ids.has(box.value);
    this.outcome.replaceChildren(...summary(choice));
    const often = oftenWith(this.index, this.card.vehicle.family, choice.list);
    const open = often.filter(({ id }) => !this.sets.onCard.has(id) && !this.sets.left.has(id));
    const words = `Often done with these: ${open.map(({ title }) => title).join("; ")}.`;
    this.often.textContent = choice.list.length > 0 && open.length > 0 ? words : "";
  }

  /**
   * @private
   * @param {Event} event
   */
  submit(event) {
    event.preventDefault();
    this.add.disabled = true;
    void this.addAll()
      .catch((error) => this.trouble.replaceChildren(notice(error.message)))
      .finally(() => (this.add.disabled = false));
  }

  /** @private */
  async addAll() {
    const { list } = this.choice;
    if (list.length === 0) throw new Error("Nothing is chosen. Tick at least one procedure.");
    await addToCard(this.app, this.session, this.card, this.index, list);
    const { card, trouble } = this.session;
    this.app.go(trouble ? `#card/${card}` : `#card/${card}/fetch`);
  }
}
