// Small questions asked in place: initials, a reason, a question for the senior.

import { el } from "./dom.js";

/**
 * @typedef {object} Question
 * @property {string} label
 * @property {string} help
 * @property {string} go what the button says
 * @property {boolean} [initials] a short entry in capitals
 * @property {string} [away] what the other button says
 * @property {string} [value]
 * @property {(entry: string) => string} [refuse] why an entry will not do, or ""
 */

/** Where the form is shown and what happens with it.
 * @typedef {{answer: (entry: string) => void, away: () => void}} Outcome */

let count = 0;

/**
 * A form that asks one thing. It keeps what was entered until that will do.
 *
 * @param {Question} question
 * @param {Outcome} outcome
 */
export function askForm(question, outcome) {
  const id = `uh-ask-${(count += 1)}`;
  const input = entryOf(question, id);
  const error = el("p", { class: "uh-field__error", id: `${id}-error`, role: "alert" });
  const field = el(
    "div",
    { class: "uh-field" },
    el("label", { for: id }, question.label),
    input,
    el("p", { class: "uh-field__help", id: `${id}-help` }, question.help),
    error,
  );
  const submit = (/** @type {Event} */ event) => {
    event.preventDefault();
    const entry = input.value.trim();
    const wrong = entry === "" ? "Nothing is entered." : (question.refuse?.(entry) ?? "");
    error.textContent = wrong;
    input.removeAttribute("aria-invalid");
    if (wrong === "") outcome.answer(entry);
    else refused(input);
  };
  const away = question.away ?? "Cancel";
  return el(
    "form",
    { class: "uh-card__ask", onsubmit: submit, novalidate: true, autocomplete: "off" },
    field,
    el(
      "div",
      { class: "uh-card__answers" },
      el("button", { class: "uh-button", type: "submit" }, question.go),
      el(
        "button",
        { class: "uh-button uh-button--plain", type: "button", onclick: outcome.away },
        away,
      ),
    ),
  );
}

/** @param {HTMLInputElement|HTMLTextAreaElement} input */
function refused(input) {
  input.setAttribute("aria-invalid", "true");
  input.focus();
}

/**
 * @param {Question} question
 * @param {string} id
 */
function entryOf(question, id) {
  const shared = { id, "aria-describedby": `${id}-help ${id}-error` };
  if (!question.initials) return el("textarea", { ...shared, rows: question.value ? 5 : 2, maxlength: 400 }, question.value ?? "");
  const short = { maxlength: 5, autocapitalize: "characters", spellcheck: "false", size: 5 };
  const value = question.value ?? "";
  return el("input", { ...shared, ...short, type: "text", autocomplete: "off", value });
}

/** @type {Question} */
export const INITIALS = {
  label: "Your initials",
  help: "Two or three letters, such as RB. They stand beside everything you tick on this phone.",
  go: "Keep",
  initials: true,
  refuse: wrongInitials,
};

/**
 * Why an entry cannot be anybody's initials, or "".
 *
 * @param {string} entry
 */
export function wrongInitials(entry) {
  return /^\p{L}[\p{L}.\s]{0,4}$/u.test(entry)
    ? ""
    : `“${entry}” does not look like initials. Write letters only, such as RB.`;
}
