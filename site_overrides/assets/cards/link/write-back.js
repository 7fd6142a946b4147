// On a calculator's page that was opened from a card: the way back, and buttons that write a value of the
// answer to the card as a reading, or keep what the entries show.

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
   * @param {{at: number, back: string}} place position of the step in hand, from 1, and the way there
   * @param {string} who initials
   */
  constructor(root, session, { at, back }, who) {
    this.root = root;
    this.session = session;
    this.at = at;
    this.back = `${new URL("cards/", siteRoot()).href}${back}`;
    this.who = who;
    this.said = el("div", { role: "status" });
    this.way = el("p", { class: "uh-from-card" });
  }

  start() {
    const { state } = this.session;
    if (!state) return;
    this.way.append(`For the card of ${cardName(state)}. `, el("a", { href: this.back }, "Back to the card"));
    this.root.prepend(this.way, this.said);
    new MutationObserver(() => this.offer()).observe(this.root, { attributeFilter: ["data-answered", "data-own", "data-pattern"] });
    const answer = this.root.querySelector(".uh-answer");
    if (answer) new MutationObserver(() => this.offer()).observe(answer, { childList: true });
    this.offer();
  }

  /** Puts the buttons below each value that the card can take. An example is not offered. */
  offer() {
    const { answered, own } = this.root.dataset;
    if (answered !== "yes" || own === undefined || !this.session.state) return;
    this.offerPattern();
    for (const plate of this.root.querySelectorAll(".uh-answer .uh-plate")) {
      if (plate.nextElementSibling?.classList.contains("uh-write-back")) continue;
      const written = plate.querySelector(".uh-plate__number")?.textContent?.trim() ?? "";
      const unit = plate.querySelector(".uh-plate__unit")?.textContent?.trim() ?? "";
      if ("wrong" in readNumber(written)) continue;
      const found = candidates(this.session.state, this.at, unit);
      if (found.length > 0) plate.after(this.buttons(found, written, unit));
    }
  }

  /** What the entries show can be kept as such: a check of a complaint may rest on it. */
  offerPattern() {
    const answer = this.root.querySelector(".uh-answer");
    const pattern = patternOf(this.root);
    if (!answer || !pattern || answer.querySelector(".uh-write-back--whole")) return;
    const place = el("div", { class: "uh-write-back__place" });
    const press = () => void this.storePattern(place);
    const button = el("button", { class: "uh-button", type: "button", onclick: press }, "Keep this answer on the card");
    answer.append(el("div", { class: "uh-write-back uh-write-back--whole" }, button, place));
  }

  /** @param {HTMLElement} place */
  async storePattern(place) {
    const pattern = patternOf(this.root);
    if (!pattern || this.session.waiting.size > 0) return;
    const name = document.querySelector("h1")?.textContent?.trim() ?? "";
    const summary = (this.root.querySelector(".uh-answer__summary")?.textContent ?? "").trim().slice(0, 1000);
    const value = { ...pattern, name, summary, from: addressHere() };
    const stored = await this.session.record("calculation", { who: this.who, kind: "calculation", value });
    const words = `On the card: ${name}.`;
    place.replaceChildren(...(stored ? [said(words), el("a", { href: this.back }, "Back to the card")] : [this.trouble(place, words)]));
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
    const answer = patternOf(this.root);
    const taken = { reading: asked.id, when, unit: asked.unit, written, reason, from: addressHere() };
    const value = { job: step.job, step: step.text.number, ...taken, ...(answer ? { answer } : {}) };
    const stored = await this.session.record(step.key, { who: this.who, kind: "reading", value, revision });
    const words = `On the card: ${readingName(reading)}, ${written} ${asked.unit_words}.`;
    place.replaceChildren(stored ? said(words) : this.trouble(place, words));
  }

  /**
   * @param {HTMLElement} place
   * @param {string} words
   */
  trouble(place, words) {
    const retry = async () => {
      const stored = await this.session.retry();
      place.replaceChildren(stored ? said(words) : this.trouble(place, words));
    };
    const again = el("button", { class: "uh-button", type: "button", onclick: () => void retry() }, "Try again");
    return notice(`Not stored yet. ${this.session.trouble}`, again);
  }
}

/** The calculator with its entries. */
const addressHere = () => `${location.pathname}${location.search}`;

/** @param {string} words */
const said = (words) => el("p", { role: "status" }, words);

/**
 * What the calculator says that its entries show, null where it says no such thing.
 *
 * @param {HTMLElement} root
 */
function patternOf({ dataset: { calculator = "", pattern = "", rivals = "" } }) {
  return pattern === "" ? null : { calculator, pattern, rivals: rivals.split(", ").filter(Boolean) };
}

/** Where the address names a card of this phone, its answers can be written there. */
async function start() {
  const root = document.getElementById("calculator");
  const named = cardInHash(location.hash);
  const who = String((await remembered("initials")) ?? "");
  if (!root || !named || who === "") return;
  const session = new Session(named.card, { append, eventsOf, keep }, () => {});
  await session.load();
  if (session.state && !session.state.closed) new WriteBack(root, session, named, who).start();
}

await start().catch(() => {}); // without its storage the calculator still calculates
