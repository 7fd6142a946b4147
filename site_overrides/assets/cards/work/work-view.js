// Working through a card: the step in hand fills the screen, the tick lies at the thumb.

import { answerAct, actsFor, checkAct } from "./acts.js";
import { notice } from "../app.js";
import { INITIALS, askForm } from "../kit/ask.js";
import { canonical } from "../record/canonical.js";
import { el } from "../kit/dom.js";
import { steps } from "../record/fold.js";
import { leftInWords, missingReadings, nextOpen, openReasons } from "../record/left.js";
import { shapeDrawing, shapeWord } from "../kit/shapes.js";
import { sheet } from "../out/sheet-view.js";
import { stepRow, stepView } from "./step-view.js";
import { setText, workFrame } from "./work-frame.js";

/** @import { Act } from "./acts.js" */
/** @import { App } from "../app.js" */
/** @import { Question } from "../kit/ask.js" */
/** @import { Entry } from "./reading-form.js" */
/** @import { Session } from "../record/session.js" */
/** @import { CardState, ReadingState, Shape, StepState } from "../types.js" */

// The step under the thumb changes after a tick; a second tap that was meant for the first is not
// taken as a tick of the next.
const SETTLE = 450; // ms

export class WorkView {
  awake = true;

  /**
   * @param {App} app
   * @param {Session} session
   * @param {CardState} card
   * @param {number|null} at position among all steps, from 0; null for the first that is open
   */
  constructor(app, session, card, at) {
    this.app = app;
    this.session = session;
    this.card = card;
    this.at = Math.min(at ?? nextOpen(steps(card), -1), Math.max(steps(card).length - 1, 0));
    this.readyAt = 0;
    this.shown = "";
    this.frame = workFrame(card, { tap: () => this.tap(), askWho: () => this.askWho() });
    this.node = this.frame.node;
    window.addEventListener("beforeprint", this.toPaper);
    window.addEventListener("afterprint", this.fromPaper);
  }

  leave() {
    window.removeEventListener("beforeprint", this.toPaper);
    window.removeEventListener("afterprint", this.fromPaper);
  }

  toPaper = () => {
    this.app.root.append(el("div", { class: "uh-card--paper" }, sheet(this.card)));
  };

  fromPaper = () => {
    for (const paper of this.app.root.querySelectorAll(".uh-card--paper")) paper.remove();
  };

  /** The step in hand. */
  get step() {
    return /** @type {StepState} */ (steps(this.card)[this.at]);
  }

  /** Shows the card as it stands; what did not change is left alone, with its focus and entries. */
  update() {
    this.card = this.session.state ?? this.card;
    setText(this.frame.left, leftInWords(this.card));
    setText(this.frame.who, this.app.initials);
    this.frame.who.setAttribute("aria-label", `Your initials: ${this.app.initials}. Change them`);
    this.showTrouble();
    const all = steps(this.card);
    this.frame.acts.hidden = all.length === 0 || this.card.closed !== null;
    if (all.length > 0) {
      this.showSteps(all);
      this.showActs();
    }
  }

  /** @private */
  showTrouble() {
    const words = this.session.trouble;
    if (words === (this.frame.trouble.dataset.words ?? "")) return;
    this.frame.trouble.dataset.words = words;
    const again = el("button", { class: "uh-button", type: "button" }, "Try again");
    again.addEventListener("click", () => void this.session.retry());
    this.frame.trouble.replaceChildren(...(words ? [notice(`Not stored yet. ${words}`, again)] : []));
  }

  /**
   * @private
   * @param {StepState[]} all
   */
  showSteps(all) {
    const near = all.slice(Math.max(this.at - 1, 0), this.at + 2);
    const shapes = near.map((step) => this.shapeNow(step));
    const seen = canonical([this.at, near, shapes, this.card.closed]);
    if (seen === this.shown) return;
    this.shown = seen;
    const hadFocus = this.frame.list.contains(document.activeElement);
    const lines = near.map((step) => this.line(step, all.indexOf(step)));
    this.frame.list.replaceChildren(...lines);
    if (hadFocus) this.focusNext();
    history.replaceState(null, "", `#card/${this.card.id}/${this.at + 1}`);
  }

  /**
   * @private
   * @param {StepState} step
   * @param {number} index
   */
  line(step, index) {
    const place = ["before", "current", "after"][index - this.at + 1];
    const shape = this.shapeNow(step);
    const attributes = { class: "uh-card__step", "data-place": place, "data-state": shape };
    if (index !== this.at) return el("li", attributes, stepRow(step, shape, () => this.move(index)));
    const job = this.card.jobs.find((one) => one.id === step.job) ?? this.card.jobs[0];
    /** @param {ReadingState} reading @param {Entry} entry */
    const record = (reading, entry) => void this.takeReading(step, reading, entry);
    const open = this.card.closed === null;
    return el("li", attributes, ...stepView(this.card, job, step, open ? record : null, this.frame.place));
  }

  /** @private */
  showActs() {
    const step = this.step;
    const shape = this.shapeNow(step);
    const failed = this.session.waitingFor(step.key)?.trouble;
    this.frame.tick.setAttribute("aria-label", `Step ${step.text.number}: ${step.text.text}`);
    this.frame.tick.setAttribute("aria-pressed", String(shape === "stored" || shape === "checked"));
    if (this.frame.tick.dataset.state !== shape) this.frame.tick.replaceChildren(shapeDrawing(shape));
    this.frame.tick.dataset.state = shape;
    setText(this.frame.word, failed ? "Not stored yet" : shapeWord(step, shape));
    const buttons = shape === "storing" ? [] : actsFor(step).map((act) => this.actButton(act));
    if (step.last && shape !== "storing") buttons.push(this.undoButton(step.last));
    const seen = canonical([step.key, shape, step.last, buttons.length]);
    if (this.frame.others.dataset.seen === seen) return;
    this.frame.others.dataset.seen = seen;
    this.frame.others.replaceChildren(...buttons);
  }

  /**
   * @private
   * @param {StepState} step
   * @returns {Shape}
   */
  shapeNow(step) {
    return this.session.waitingFor(step.key) ? "storing" : step.shape;
  }

  /**
   * @private
   * @param {Act} act
   */
  actButton(act) {
    const plain = { class: "uh-button uh-button--plain", type: "button" };
    return el("button", { ...plain, onclick: () => this.askAct(act) }, act.label);
  }

  /**
   * @private
   * @param {{event: string, what: string}} last
   */
  undoButton({ event, what }) {
    const undo = async () => {
      const stored = await this.store(this.step, "undo", { of: event });
      if (stored) this.say(`Taken back: ${what}.`);
      this.frame.tick.focus();
    };
    const plain = { class: "uh-button uh-button--plain", type: "button", onclick: undo };
    return el("button", { ...plain, "aria-label": `Undo ${what}` }, "Undo");
  }

  /** What a tap on the tick does; a tap too soon after a change of step does nothing. */
  tap() {
    const step = this.step;
    if (performance.now() < this.readyAt || this.shapeNow(step) === "storing") return;
    if (step.shape === "todo") void this.tickOff(step);
    else if (step.shape === "handed-back") this.askAct(answerAct(step));
    else if (step.shape === "stored" && step.text.wants_second_check) this.askAct(checkAct(step));
    else this.refuse("This step is settled. Undo takes that back.");
  }

  /**
   * @private
   * @param {StepState} step
   */
  async tickOff(step) {
    const missing = missingReadings(step);
    if (missing.length > 0) {
      this.refuse(`Take the reading first: ${missing.join("; ")}.`);
      this.frame.list.querySelector("input")?.focus();
      return;
    }
    if (!(await this.store(step, "tick", {}))) return;
    this.say(`Stored: step ${step.text.number}.`);
    if (this.step.key !== step.key) return;
    if (step.text.wants_second_check) this.askAct(checkAct(this.step));
    else this.advance();
  }

  /** @private */
  advance() {
    const next = nextOpen(steps(this.card), this.at);
    this.readyAt = performance.now() + SETTLE;
    this.move(next, this.frame.tick);
  }

  /**
   * @param {number} at
   * @param {HTMLElement} [focus] what gets the focus; the step's heading where nothing is said
   */
  move(at, focus) {
    if (!this.node.isConnected) return; // stored after the person has gone elsewhere
    this.at = at;
    this.frame.place.replaceChildren();
    this.update();
    const heading = /** @type {HTMLElement|null} */ (this.frame.list.querySelector(".uh-card__title"));
    (focus ?? heading)?.focus({ preventScroll: true });
    this.node.scrollIntoView();
    this.say(`Step ${this.step.text.number}: ${this.step.text.text}`);
  }

  /**
   * @private
   * @param {StepState} step
   * @param {ReadingState} reading
   * @param {Entry} entry
   */
  async takeReading(step, reading, entry) {
    const { asked, when } = reading;
    const value = { reading: asked.id, when, unit: asked.unit, ...entry };
    this.frame.place.replaceChildren();
    const stored = await this.store(step, "reading", value, `${step.key}#${reading.key}`);
    if (stored) this.say(`Recorded: ${asked.name}.`);
  }

  /**
   * @private
   * @param {Act} act
   */
  askAct(act) {
    const step = this.step;
    const answer = async (/** @type {string} */ entry) => {
      const who = act.signs ? entry.toUpperCase() : this.app.initials;
      const stored = await this.store(step, act.kind, act.value(entry), step.key, who);
      if (!stored || this.step.key !== step.key) return;
      if (openReasons(this.step).length === 0 || act.kind === "hand-back") this.advance();
    };
    this.ask(act.question, answer, act.kind === "check" ? () => this.advance() : undefined);
  }

  /** @private */
  askWho() {
    this.ask({ ...INITIALS, value: this.app.initials }, async (entry) => {
      await this.app.keepInitials(entry);
      this.update();
    });
  }

  /**
   * Asks in the place below the step; the focus comes back to the tick.
   *
   * @private
   * @param {Question} question
   * @param {(entry: string) => Promise<void>} answer
   * @param {() => void} [away]
   */
  ask(question, answer, away) {
    const done = () => {
      this.frame.place.replaceChildren();
      this.frame.tick.focus();
    };
    const form = askForm(question, {
      answer: (entry) => {
        done();
        void answer(entry).catch((error) => this.refuse(error.message));
      },
      away: () => {
        done();
        away?.();
      },
    });
    this.frame.place.replaceChildren(form);
    /** @type {HTMLElement|null} */ (form.querySelector("input, textarea"))?.focus();
    form.scrollIntoView({ block: "center" });
  }

  /**
   * @private
   * @param {StepState} step
   * @param {Act["kind"]} kind
   * @param {Record<string, unknown>} value
   * @param {string} [key]
   * @param {string} [who]
   */
  store(step, kind, value, key = step.key, who = this.app.initials) {
    const revision = this.card.jobs.find((job) => job.id === step.job)?.text.revision;
    const whole = { job: step.job, step: step.text.number, ...value };
    return this.session.record(key, { who, kind, value: whole, revision });
  }

  /** @private @param {string} words */
  refuse(words) {
    const line = el("p", { class: "uh-field__error", role: "alert" }, words);
    this.frame.place.replaceChildren(line);
  }

  /** @private @param {string} words */
  say(words) {
    this.frame.aloud.textContent = words;
  }

  /** After the step was drawn anew: on to the next entry, or to the tick. @private */
  focusNext() {
    const input = /** @type {HTMLElement|null} */ (this.frame.list.querySelector("form input"));
    (input ?? this.frame.tick).focus({ preventScroll: true });
  }
}
