// What can be done about the step in hand: the questions that are asked and what is then stored.

import { wrongInitials } from "../kit/ask.js";
import { checkRefused } from "../record/left.js";

/** @import { Question } from "../kit/ask.js" */
/** @import { Kind } from "../record/events.js" */
/** @import { StepState } from "../types.js" */

/**
 * @typedef {object} Act
 * @property {string} label on its button
 * @property {Question} question
 * @property {Kind} kind
 * @property {(entry: string) => Record<string, unknown>} value beyond the step itself
 * @property {boolean} [signs] the entry is the initials of whoever acts
 */

/** @type {Act} */
const NOT_NEEDED = {
  label: "Not needed",
  kind: "not-needed",
  question: {
    label: "Why is this step not needed?",
    help: "The reason stands on the card.",
    go: "Mark as not needed",
  },
  value: (reason) => ({ reason }),
};

/** @type {Act} */
const HAND_BACK = {
  label: "Hand back",
  kind: "hand-back",
  question: {
    label: "What do you want to ask?",
    help: "The senior tech reads it. The card stays open until it is answered.",
    go: "Hand back",
  },
  value: (question) => ({ question }),
};

/**
 * The second check of a step that is done.
 *
 * @param {StepState} step
 * @returns {Act}
 */
export function checkAct(step) {
  return {
    label: "Second check",
    kind: "check",
    signs: true,
    question: {
      label: "Second check: initials of whoever looks",
      help: `Somebody other than ${step.done?.who} looks at it now and signs here.`,
      go: "Sign the check",
      away: "Later",
      initials: true,
      refuse: (entry) => wrongInitials(entry) || checkRefused(step, entry),
    },
    value: () => ({ of: step.done?.event }),
  };
}

/**
 * The answer to a question that is open.
 *
 * @param {Pick<StepState, "question">} step
 * @returns {Act}
 */
export function answerAct(step) {
  return {
    label: "Answer",
    kind: "answer",
    question: {
      label: `Answer to: ${step.question?.question}`,
      help: "The step can be worked on again once it is answered.",
      go: "Answer",
    },
    value: (answer) => ({ of: step.question?.event, answer }),
  };
}

/**
 * What is offered beside the tick, two at most: more would not stand in one row on a small phone.
 *
 * @param {StepState} step
 * @returns {Act[]}
 */
export function actsFor(step) {
  if (step.shape === "todo") return [NOT_NEEDED, HAND_BACK];
  if (step.shape === "handed-back") return [answerAct(step), ...(step.done ? [] : [NOT_NEEDED])];
  const wantsCheck = step.shape === "stored" && step.text.wants_second_check;
  return wantsCheck ? [checkAct(step), HAND_BACK] : [HAND_BACK];
}
