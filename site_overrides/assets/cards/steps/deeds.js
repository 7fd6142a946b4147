// What a person does about the step in hand: each is asked for what it wants, then stored.

import { INITIALS, askForm } from "../kit/ask.js";
import { missingReadings, openReasons } from "../record/left.js";
import { answerAct, checkAct } from "./acts.js";
import { findingForm } from "./findings/finding-form.js";

/** @import { Act } from "./acts.js" */
/** @import { Question } from "../kit/ask.js" */
/** @import { Entry } from "./reading-form.js" */
/** @import { Kind } from "../record/events.js" */
/** @import { ReadingState, StepState } from "../types.js" */
/** @import { WorkView } from "./work-view.js" */

export class Deeds {
  /** @param {WorkView} view */
  constructor(view) {
    this.view = view;
  }

  /** What a tap on the tick does. */
  tap() {
    const { step } = this.view;
    if (step.shape === "todo") void this.tickOff(step);
    else if (step.shape === "handed-back") this.askAct(answerAct(step));
    else if (step.shape === "stored" && step.text.wants_second_check) this.askAct(checkAct(step));
    else this.view.refuse("This step is settled. Undo takes that back.");
  }

  /**
   * @private
   * @param {StepState} step
   */
  async tickOff(step) {
    const missing = missingReadings(step);
    if (missing.length > 0) {
      this.view.refuse(`Take the reading first: ${missing.join("; ")}.`);
      this.view.focusEntry();
      return;
    }
    if (!(await this.store(step, "tick", {}))) return;
    this.view.say(`Stored: step ${step.text.number}.`);
    if (this.view.step.key !== step.key) return;
    if (step.text.wants_second_check) this.askAct(checkAct(this.view.step));
    else this.view.advance();
  }

  /**
   * A reading, and the finding that it was made into.
   *
   * @param {StepState} step
   * @param {ReadingState} reading
   * @param {Entry} entry
   */
  async takeReading(step, reading, { written, reason, urgency }) {
    const { asked, when } = reading;
    const value = { reading: asked.id, when, unit: asked.unit, written, reason };
    this.view.clear();
    const stored = await this.store(step, "reading", value, `${step.key}#${reading.key}`);
    if (stored) this.view.say(`Recorded: ${asked.name}.`);
    if (urgency === "") return;
    const said = reason.replace(/[.\s]+$/, "");
    const what = `${said}. ${asked.name}, ${when}: ${written} ${asked.unit_words}; good is ${asked.limits_text}.`;
    await this.storeFinding(step, { what, urgency });
  }

  /** @param {Act} act */
  askAct(act) {
    const { step } = this.view;
    const answer = async (/** @type {string} */ entry) => {
      const who = act.signs ? entry.toUpperCase() : this.view.app.initials;
      const stored = await this.store(step, act.kind, act.value(entry), step.key, who);
      if (!stored || this.view.step.key !== step.key) return;
      if (openReasons(this.view.step).length === 0 || act.kind === "hand-back") this.view.advance();
    };
    this.ask(act.question, answer, act.kind === "check" ? () => this.view.advance() : undefined);
  }

  askFinding() {
    const { step } = this.view;
    const form = findingForm({
      answer: (finding) => {
        this.view.settle();
        void this.storeFinding(step, finding);
      },
      away: () => this.view.settle(),
    });
    this.view.put(form);
  }

  /** @param {{event: string, what: string}} last */
  async undo({ event, what }) {
    const stored = await this.store(this.view.step, "undo", { of: event });
    if (stored) this.view.say(`Taken back: ${what}.`);
    this.view.frame.tick.focus();
  }

  askWho() {
    const { app } = this.view;
    this.ask({ ...INITIALS, value: app.initials }, async (entry) => {
      await app.keepInitials(entry);
      this.view.update();
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
    const form = askForm(question, {
      answer: (entry) => {
        this.view.settle();
        void answer(entry).catch((error) => this.view.refuse(error.message));
      },
      away: () => {
        this.view.settle();
        away?.();
      },
    });
    this.view.put(form);
  }

  /**
   * @private
   * @param {StepState} step
   * @param {{what: string, urgency: string}} finding
   */
  async storeFinding(step, finding) {
    if (await this.store(step, "finding", finding, `${step.key}#finding`)) this.view.say("Stored: the finding.");
  }

  /**
   * @private
   * @param {StepState} step
   * @param {Kind} kind
   * @param {Record<string, unknown>} value
   * @param {string} [key]
   * @param {string} [who]
   */
  store(step, kind, value, key = step.key, who = this.view.app.initials) {
    const { card, session } = this.view;
    const revision = card.jobs.find((job) => job.id === step.job)?.text.revision;
    const whole = { job: step.job, step: step.text.number, ...value };
    return session.record(key, { who, kind, value: whole, revision });
  }
}
