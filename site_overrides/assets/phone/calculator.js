/** Makes a calculator page answer while typing. Without it the page keeps its worked example. */
import { AnswerStrip } from "./answer-strip.js";
import { calculators } from "./calculator-client.js";
import { entriesOf, fillFrom, showErrors } from "./calculator-fields.js";
import { tellFolded } from "./folded-fields.js";
import { nextTask } from "./next-task.js";
import { redraw } from "./redraw.js";

/** @typedef {import("./calculator-worker.js").Result} Result */
/** @typedef {import("./calculator-fields.js").Control} Control */

/** @type {() => void} */
let tell = () => {};

/** Kept once the first answer is there, or has failed. */
export const answered = new Promise((done) => (tell = () => done(undefined)));

/** The calculator on this page: the form, its answer, and a line that says how things stand. */
export class LiveCalculator {
  /**
   * @param {HTMLElement} root
   * @param {(entries: Record<string, string>) => void} keep puts the entries where a reload finds them
   */
  constructor(root, keep = keepInAddress) {
    this.place = root;
    this.keep = keep;
    this.name = root.dataset.calculator ?? "";
    this.form = /** @type {HTMLFormElement} */ (root.querySelector("form.uh-calc"));
    this.answer = /** @type {HTMLElement} */ (root.querySelector(".uh-answer"));
    this.state = Object.assign(document.createElement("p"), { className: "uh-calc__state" });
    this.state.setAttribute("role", "status");
    this.answer.before(this.state);
    this.strip = new AnswerStrip(this.answer, this.name);
    /** @type {Set<string>} fields that were filled in or changed */
    this.touched = new Set();
    this.isAsking = false;
    this.isChanged = false;
    this.hasAnswered = false;
  }

  /**
   * Fills the form from the address, brings Python up and answers from then on.
   * @param {URLSearchParams} given
   */
  start(given = new URLSearchParams(location.search)) {
    this.form.addEventListener("input", ({ target }) => this.typed(/** @type {Control} */ (target)));
    // Safari limits how often the address may change, so not at every keystroke.
    this.form.addEventListener("change", () => this.keep(entriesOf(this.form)));
    this.form.addEventListener("submit", (event) => {
      event.preventDefault();
      this.changed();
      this.answer.scrollIntoView({ block: "nearest" });
    });
    this.fill(given);
  }

  /**
   * Takes entries as an address gives them, and answers.
   * @param {URLSearchParams} given
   */
  fill(given) {
    const filled = fillFrom(this.form, given);
    this.touched = new Set(filled);
    tellFolded(this.form);
    if (filled.length) this.changed();
    else void this.work(); // The answer stays what it was; the next one is then quick.
  }

  /** @param {Control} field */
  typed(field) {
    this.touched.add(field.name);
    tellFolded(this.form);
    this.changed();
  }

  /** Something is new. While one answer is worked out, only the newest entries wait. */
  changed() {
    if (!this.hasAnswered) this.say("The answer below is for the example. Yours is being worked out.");
    if (this.isAsking) this.isChanged = true;
    else void this.work();
  }

  async work() {
    this.isAsking = true;
    do {
      this.isChanged = false;
      await this.askOnce();
    } while (this.isChanged);
    this.isAsking = false;
  }

  async askOnce() {
    try {
      const result = await calculators.ask(this.name, entriesOf(this.form));
      await nextTask(); // to take it in was one
      if (this.isChanged) return;
      this.show(result);
    } catch (error) {
      this.sayFailed(error instanceof Error ? error.message : String(error));
    }
    tell();
  }

  /** @param {Result} result */
  show(result) {
    showErrors(this.form, result.errors, this.touched);
    const shown = new DOMParser().parseFromString(result.answer_html, "text/html");
    const fresh = shown.querySelector(".uh-answer");
    if (fresh) replaceKeepingOpen(this.answer, fresh);
    this.hasAnswered = true;
    if (this.touched.size) this.strip.update();
    this.root().toggleAttribute("data-own", this.touched.size > 0); // not the example any more
    const { pattern = "", rivals = "" } = result.answer?.values ?? {};
    Object.assign(this.root().dataset, { pattern, rivals }); // a job card keeps them
    this.root().dataset.answered = result.ok ? "yes" : "mend";
    this.say("");
  }

  /** @param {string} reason */
  sayFailed(reason) {
    const which = this.hasAnswered ? "The answer below is for earlier entries." : "The answer below is for the example.";
    this.say(`The calculator stopped: ${reason}. ${which} Your entries are kept. `);
    const again = Object.assign(document.createElement("button"), { type: "button", textContent: "Try again" });
    again.className = "uh-button";
    again.addEventListener("click", () => this.changed());
    this.state.append(again);
    this.root().dataset.answered = "failed";
  }

  /** @param {string} words */
  say(words) {
    if (this.state.textContent !== words) this.state.textContent = words;
  }

  root() {
    return this.place;
  }
}

/**
 * Puts a new answer in place of the old; an exact value that was opened stays open.
 * @param {Element} place
 * @param {Element} fresh
 */
function replaceKeepingOpen(place, fresh) {
  const isOpen = [...place.querySelectorAll("details")].map(({ open }) => open);
  fresh.querySelectorAll("details").forEach((each, at) => (each.open = isOpen[at] ?? false));
  redraw(place, fresh);
}

/**
 * Puts the entries into the address, so that a reload or a sent link shows them again.
 * @param {Record<string, string>} entries
 */
function keepInAddress(entries) {
  const given = new URLSearchParams(Object.entries(entries).filter(([, text]) => text !== ""));
  history.replaceState(history.state, "", `?${given}${location.hash}`);
}

const root = document.getElementById("calculator");
if (root?.querySelector("form.uh-calc") && root.querySelector(".uh-answer")) new LiveCalculator(root).start();
