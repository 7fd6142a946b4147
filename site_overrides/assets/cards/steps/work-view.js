// Working through a card: the step in hand fills the screen, the tick lies at the thumb.

import { actsFor } from "./acts.js";
import { notStored } from "../app.js";
import { canonical } from "../record/canonical.js";
import { el } from "../kit/dom.js";
import { steps } from "../record/fold.js";
import { leftInWords, nextOpen } from "../record/left.js";
import { shapeDrawing, shapeWord } from "../kit/shapes.js";
import { PaperAhead } from "../out/paper-ahead.js";
import { Deeds } from "./deeds.js";
import { findingsOf } from "./findings/finding-line.js";
import { offInWords } from "./off-words.js";
import { photosWaiting } from "./photos/photo-strip.js";
import { stepRow } from "./step-row.js";
import { StepView, subjectOf } from "./step-view.js";
import { showNews } from "../renew/news-lines.js";
import { countWays, setText, workFrame } from "./work-frame.js";

/** @import { Act } from "./acts.js" */
/** @import { App } from "../app.js" */
/** @import { Session } from "../record/session.js" */
/** @import { CardState, Shape, StepState } from "../types.js" */

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
    this.all = steps(card);
    this.at = Math.min(at ?? nextOpen(this.all, -1), Math.max(this.all.length - 1, 0));
    this.readyAt = 0;
    this.shown = "";
    this.paper = new PaperAhead();
    this.deeds = new Deeds(this);
    this.frame = workFrame(card, { tap: () => this.tap(), askWho: () => this.deeds.askWho() });
    this.stepView = new StepView(this);
    this.node = this.frame.node;
    window.addEventListener("beforeprint", this.toPaper);
    window.addEventListener("afterprint", this.fromPaper);
  }

  leave() {
    window.removeEventListener("beforeprint", this.toPaper);
    window.removeEventListener("afterprint", this.fromPaper);
    this.paper.leave();
  }

  toPaper = () => {
    this.app.root.append(this.paper.of(this.card));
  };

  fromPaper = () => {
    for (const paper of this.app.root.querySelectorAll(".uh-card--paper")) paper.remove();
  };

  /** The step in hand. */
  get step() {
    return /** @type {StepState} */ (this.all[this.at]);
  }

  /** Shows the card as it stands; what did not change is left alone, with its focus and entries. */
  update() {
    this.card = this.session.state ?? this.card;
    this.all = steps(this.card);
    this.paper.take(this.card);
    setText(this.frame.left, leftInWords(this.card));
    setText(this.frame.off, offInWords(this.card));
    countWays(this.frame.link, this.card);
    setText(this.frame.who, this.app.initials);
    this.frame.who.setAttribute("aria-label", `Your initials: ${this.app.initials}. Change them`);
    this.showTrouble();
    showNews(this.frame.news, this.session, this.card, this.step?.job);
    this.frame.acts.hidden = this.all.length === 0 || this.card.closed !== null;
    if (this.all.length > 0) {
      this.showSteps();
      this.showActs();
    }
  }

  /** @private */
  showTrouble() {
    const words = this.session.trouble;
    if (words === (this.frame.trouble.dataset.words ?? "")) return;
    this.frame.trouble.dataset.words = words;
    this.frame.trouble.replaceChildren(...notStored(this.session));
  }

  /** @private */
  showSteps() {
    const { step } = this;
    const first = Math.max(this.at - 1, 0);
    const near = this.all.slice(first, this.at + 2);
    const marks = near.map((one) => ({ ...one, text: one.text.html, shape: this.shapeNow(one) }));
    const more = [findingsOf(this.card.findings, step), photosWaiting(this.session, subjectOf(step))];
    const seen = canonical([this.at, marks, this.stepView.readingsBeside(step), more, this.card.closed]);
    if (seen === this.shown) return;
    this.shown = seen;
    const focus = /** @type {HTMLElement|null} */ (document.activeElement);
    const hadFocus = this.frame.list.contains(focus);
    this.frame.list.replaceChildren(...near.map((one, index) => this.line(one, first + index)));
    if (hadFocus) this.focusAgain(focus);
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
    if (index === this.at) return el("li", attributes, ...this.stepView.contents(step));
    const other = step.job === this.step.job ? null : this.card.jobs.find(({ id }) => id === step.job);
    return el("li", attributes, stepRow(step, shape, other?.text.title ?? "", () => this.move(index)));
  }

  /** @private */
  showActs() {
    const { step } = this;
    const shape = this.shapeNow(step);
    const failed = this.session.waitingFor(step.key)?.trouble;
    this.frame.tick.setAttribute("aria-label", `Step ${step.text.number}: ${step.text.text}`);
    this.frame.tick.setAttribute("aria-pressed", String(shape === "stored" || shape === "checked"));
    if (this.frame.tick.dataset.state !== shape) this.frame.tick.replaceChildren(shapeDrawing(shape));
    this.frame.tick.dataset.state = shape;
    setText(this.frame.word, failed ? "Not stored yet" : shapeWord(step, shape));
    const acts = shape === "storing" ? [] : actsFor(step);
    const seen = canonical([step.key, shape, step.question, step.done, acts.map(({ kind }) => kind)]);
    if (this.frame.others.dataset.seen === seen) return;
    this.frame.others.dataset.seen = seen;
    this.frame.others.replaceChildren(...acts.map((act) => this.actButton(act)));
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
    return el("button", { ...plain, onclick: () => this.deeds.askAct(act) }, act.label);
  }

  /** A tap too soon after a change of step does nothing. */
  tap() {
    if (performance.now() < this.readyAt || this.shapeNow(this.step) === "storing") return;
    this.deeds.tap();
  }

  advance() {
    const next = nextOpen(this.all, this.at);
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
    this.clear();
    this.update();
    const heading = /** @type {HTMLElement|null} */ (this.frame.list.querySelector(".uh-card__title"));
    (focus ?? heading)?.focus({ preventScroll: true });
    this.node.scrollIntoView();
    this.say(`Step ${this.step.text.number}: ${this.step.text.text}`);
  }

  /** Puts a form in the place below the step and begins in its first entry. @param {HTMLElement} form */
  put(form) {
    this.frame.place.replaceChildren(form);
    /** @type {HTMLElement|null} */ (form.querySelector("input, textarea"))?.focus();
    form.scrollIntoView({ block: form.offsetHeight > window.innerHeight / 2 ? "start" : "center" });
  }

  /** Takes away what was asked; the focus comes back to the tick. */
  settle() {
    this.clear();
    this.frame.tick.focus();
  }

  clear() {
    this.frame.place.replaceChildren();
  }

  /** @param {string} words */
  refuse(words) {
    const line = el("p", { class: "uh-field__error", role: "alert" }, words);
    this.frame.place.replaceChildren(line);
  }

  /** @param {string} words */
  say(words) {
    this.frame.aloud.textContent = words;
  }

  focusEntry() {
    this.frame.list.querySelector(/** @type {"input"} */ (".uh-card__reading input"))?.focus();
  }

  /**
   * After the step was drawn anew: where it was, or on to the next entry, or to the tick.
   *
   * @private
   * @param {HTMLElement|null} before
   */
  focusAgain(before) {
    const entry = /** @type {HTMLElement|null} */ (this.frame.list.querySelector(".uh-card__reading input"));
    const same = before?.isConnected ? before : null;
    (same ?? entry ?? this.frame.tick).focus({ preventScroll: true });
  }
}
