// None of these: the search is handed back to the senior tech, as a step is.

import { timeWords } from "../app.js";
import { askForm } from "../kit/ask.js";
import { el } from "../kit/dom.js";
import { RESULT_WORDS } from "./words.js";

/** @import { FaultView } from "./fault-view.js" */

/** Characters of a question. */
const LONGEST = 400;

export class AskSenior {
  /** @param {FaultView} view */
  constructor(view) {
    this.view = view;
    this.place = el("div", { class: "uh-cause__place" });
  }

  /** Whether a question waits for its answer. */
  get isOpen() {
    const { question, answer } = this.view.fault;
    return question !== null && answer === null;
  }

  /**
   * Says beside “Stop and ask” what was asked and answered, and offers to ask.
   *
   * @param {HTMLElement} drawn
   */
  fill(drawn) {
    const section = drawn.querySelector(".uh-ask");
    const { card, fault } = this.view;
    const { question, answer } = fault;
    const told = [
      question && `Asked by ${question.who}, ${timeWords(question.at)}: ${question.question}`,
      answer && `Answered by ${answer.who}, ${timeWords(answer.at)}: ${answer.answer}`,
    ];
    const lines = told.flatMap((words) => (words ? [el("p", { class: "uh-card__said" }, words)] : []));
    const questions = el("a", { class: "uh-button", href: `#card/${card.id}/questions` }, "Questions for the senior");
    const press = { class: "uh-button", type: "button", onclick: () => this.ask() };
    const act = card.closed ? null : this.isOpen ? questions : el("button", press, "Ask the senior tech");
    if (section?.hasAttribute("hidden")) drawn.prepend(...lines);
    else section?.append(...lines, ...(act ? [el("p", {}, act)] : []));
  }

  /** Asks for the question, with what was checked already in it. */
  ask() {
    const question = {
      label: "What do you want to ask?",
      help: "The senior tech reads it. The card stays open until it is answered.",
      go: "Hand back",
      value: this.begun(),
    };
    const away = () => {
      this.place.replaceChildren();
      this.view.view.focusNext();
    };
    const answer = (/** @type {string} */ entry) => {
      away();
      const value = { job: "", step: 0, fault: this.view.fault.id, question: entry };
      void this.view.store("question", "hand-back", value, "Handed back to the senior tech.");
    };
    const form = askForm(question, { answer, away });
    this.place.replaceChildren(form);
    form.querySelector("textarea")?.focus();
    form.scrollIntoView({ block: "center" });
  }

  /** Goes on with the checks: the question is taken back. */
  async takeBack() {
    const { question } = this.view.fault;
    if (question) await this.view.store("question", "undo", { of: question.event }, "The question is taken back.");
  }

  /** @private */
  begun() {
    const { results, fault } = this.view;
    const done = results.map(({ name, result }) => `${name}: ${RESULT_WORDS[result].toLowerCase()}`);
    const words = `None of these fits “${fault.complaint}”.${done.length > 0 ? ` ${done.join("; ")}.` : ""} What next?`;
    return words.length > LONGEST ? `${words.slice(0, LONGEST - 1)}…` : words;
  }
}
