// What became of a finding: done, advised or declined. Deciding again is a new entry.

import { el } from "../../kit/dom.js";
import { DECISION_WORDS } from "../../kit/finding-words.js";
import { radios } from "../../kit/radios.js";

/** @import { FindingState } from "../../types.js" */

const WORDS = {
  ...DECISION_WORDS,
  done: "Done: it was put right",
  advised: "Advised: the owner was told",
  declined: "Declined: the owner was told and does not want it now",
};

/**
 * @param {FindingState} finding
 * @param {{answer: (value: {decision: string, note: string}) => void, away: () => void}} outcome
 */
export function decideForm({ id, decision }, { answer, away }) {
  const choice = radios("What became of it?", WORDS, decision?.decision ?? "");
  const note = el("textarea", { id: `uh-note-${id}`, rows: 2, maxlength: 400 });
  const submit = (/** @type {Event} */ event) => {
    event.preventDefault();
    const chosen = choice.need("Nothing is chosen. Choose what became of it.");
    if (chosen !== null) answer({ decision: chosen, note: note.value.trim() });
  };
  const optional = el("span", { class: "uh-field__optional" }, " if there is more to say");
  return el(
    "form",
    { class: "uh-card__ask", onsubmit: submit, novalidate: true, autocomplete: "off" },
    choice.node,
    el("div", { class: "uh-field" }, el("label", { for: `uh-note-${id}` }, "Note", optional), note),
    el(
      "div",
      { class: "uh-card__answers" },
      el("button", { class: "uh-button", type: "submit" }, "Record the decision"),
      el("button", { class: "uh-button uh-button--plain", type: "button", onclick: away }, "Cancel"),
    ),
  );
}
