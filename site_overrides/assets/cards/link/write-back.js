// On a calculator's page that was opened from a card: the way back, and a button that writes the
// answer to the card as a reading.

import { cardName, notice } from "../app.js";
import { askForm } from "../kit/ask.js";
import { el } from "../kit/dom.js";
import { readingName } from "../kit/reading-words.js";
import { siteRoot } from "../plan/manual.js";
import { keep } from "../record/merge.js";
import { readNumber } from "../record/numbers.js";
import { Session } from "../record/session.js";
import { append, eventsOf, remembered } from "../record/store.js";
import { candidates, wantsReason } from "./candidates.js";
import { cardInHash } from "./to-calculator.js";

/** @import { Candidate } from "./candidates.js" */

class WriteBack {
  /**
   * @param {HTMLElement} root the calculator
   * @param {Session} session
   * @param {number} at position of the step in hand, from 1
   * @param {string} who initials
   */
  constructor(root, session, at, who) {
    this.root = root;
    this.session = session;
    this.at = at;
    this.who = who;
    this.said = el("div", { role: "status" });
    this.way = el("p", { class: "uh-from-card" });
  }

  start() {
    const { state } = this.session;
    if (!state) return;
    const back = `${new URL("cards/", siteRoot()).href}#card/${state.id}/${this.at}`;
    this.way.append(`For the card of ${cardName(state)}. `, el("a", { href: back }, "Back to the card"));
    this.root.prepend(this.way, this.said);
    new MutationObserver(() => this.offer()).observe(this.root, { attributeFilter: ["data-answered", "data-own"] });
    const answer = this.root.querySelector(".uh-answer");
    if (answer) new MutationObserver(() => this.offer()).observe(answer, { childList: true });
    this.offer();
  }

  /** Puts the buttons below each value that the card can take. An example is not offered. */
  offer() {
    const { answered, own } = this.root.dataset;
    if (answered !== "yes" || own === undefined || !this.session.state) return;
    for (const plate of this.root.querySelectorAll(".uh-answer .uh-plate")) {
      if (plate.nextElementSibling?.classList.contains("uh-write-back")) continue;
      const written = plate.querySelector(".uh-plate__number")?.textContent?.trim() ?? "";
      const unit = plate.querySelector(".uh-plate__unit")?.textContent?.trim() ?? "";
      if ("wrong" in readNumber(written)) continue;
      const found = candidates(this.session.state, this.at, unit);
      if (found.length > 0) plate.after(this.buttons(found, written, unit));
    }
  }

  /**
   * @param {Candidate[]} found
   * @param {string} written
   * @param {string} unit
   */
  buttons(found, written, unit) {
    const made = found.map((one) => {
      const words = `Write ${written} ${unit} to the card: ${readingName(one.reading)}`;
      const press = () => this.write(one, written, place);
      return el("button", { class: "uh-button uh-button--plain", type: "button", onclick: press }, words);
    });
    const place = el("div", { class: "uh-write-back__place" });
    return el("div", { class: "uh-write-back" }, ...made, place);
  }

  /**
   * @param {Candidate} one
   * @param {string} written
   * @param {HTMLElement} place
   */
  write(one, written, place) {
    if (!wantsReason(written, one.reading)) return void this.store(one, written, "", place);
    const question = {
      label: `${written} is outside ${one.reading.asked.limits_text}. Why, or what did you find?`,
      help: "The reason stands on the card beside the reading.",
      go: "Write to the card",
    };
    const answer = (/** @type {string} */ reason) => void this.store(one, written, reason, place);
    place.replaceChildren(askForm(question, { answer, away: () => place.replaceChildren() }));
    place.querySelector("textarea")?.focus();
  }

  /**
   * @param {Candidate} one
   * @param {string} written
   * @param {string} reason
   * @param {HTMLElement} place
   */
  async store({ step, reading }, written, reason, place) {
    const { asked, when } = reading;
    const revision = this.session.state?.jobs.find((job) => job.id === step.job)?.text.revision;
    const from = `${location.pathname}${location.search}`;
    const value = { job: step.job, step: step.text.number, reading: asked.id, when, unit: asked.unit, written, reason, from };
    const stored = await this.session.record(step.key, { who: this.who, kind: "reading", value, revision });
    const words = `On the card: ${readingName(reading)}, ${written} ${asked.unit_words}.`;
    place.replaceChildren(stored ? el("p", { role: "status" }, words) : this.trouble(place, words));
  }

  /**
   * @param {HTMLElement} place
   * @param {string} words
   */
  trouble(place, words) {
    const retry = async () => {
      const stored = await this.session.retry();
      place.replaceChildren(stored ? el("p", { role: "status" }, words) : this.trouble(place, words));
    };
    const again = el("button", { class: "uh-button", type: "button", onclick: () => void retry() }, "Try again");
    return notice(`Not stored yet. ${this.session.trouble}`, again);
  }
}

/** Where the address names a card of this phone, its answers can be written there. */
async function start() {
  const root = document.getElementById("calculator");
  const named = cardInHash(location.hash);
  const who = String((await remembered("initials")) ?? "");
  if (!root || !named || who === "") return;
  const session = new Session(named.card, { append, eventsOf, keep }, () => {});
  await session.load();
  if (session.state && !session.state.closed) new WriteBack(root, session, named.at, who).start();
}

await start().catch(() => {}); // without its storage the calculator still calculates
