// Writes down what was found, and how soon it wants seeing to.

import { el } from "../../kit/dom.js";
import { URGENCY_WORDS } from "../../kit/finding-words.js";
import { radios } from "../../kit/radios.js";

let count = 0;

/**
 * @param {{answer: (finding: {what: string, urgency: string}) => void, away: () => void}} outcome
 * @param {{what: string, urgency: string}} [given] what it begins with
 */
export function findingForm({ answer, away }, given = { what: "", urgency: "" }) {
  const id = `uh-finding-${(count += 1)}`;
  const entry = { id, rows: given.what ? 4 : 2, maxlength: 400, "aria-describedby": `${id}-help ${id}-error` };
  const what = el("textarea", entry, given.what);
  const error = el("p", { class: "uh-field__error", id: `${id}-error`, role: "alert" });
  const urgency = radios("How soon does it want seeing to?", URGENCY_WORDS, given.urgency);
  const submit = (/** @type {Event} */ event) => {
    event.preventDefault();
    const words = what.value.trim();
    error.textContent = words === "" ? "Nothing is entered. Write what you found." : "";
    if (words === "") {
      what.setAttribute("aria-invalid", "true");
      return what.focus();
    }
    what.removeAttribute("aria-invalid");
    const soon = urgency.need("Nothing is chosen. Choose how soon it wants seeing to.");
    if (soon !== null) answer({ what: words, urgency: soon });
  };
  const field = el(
    "div",
    { class: "uh-field" },
    el("label", { for: id }, "What did you find?"),
    what,
    el("p", { class: "uh-field__help", id: `${id}-help` }, "What, where and how bad. The owner reads it."),
    error,
  );
  return el(
    "form",
    { class: "uh-card__ask", onsubmit: submit, novalidate: true, autocomplete: "off" },
    field,
    urgency.node,
    el(
      "div",
      { class: "uh-card__answers" },
      el("button", { class: "uh-button", type: "submit" }, "Write it down"),
      el("button", { class: "uh-button uh-button--plain", type: "button", onclick: away }, "Cancel"),
    ),
  );
}
