// A labelled entry with its help and its error.

import { el } from "./dom.js";

/**
 * @typedef {object} FieldOptions
 * @property {boolean} [optional]
 * @property {number} [lines] more than one line
 * @property {string} [needed] what it is needed for
 * @property {(entry: string) => string} [refuse] why an entry will not do, or ""
 */

/** @type {WeakMap<Element, FieldOptions>} */
const OPTIONS = new WeakMap();

/**
 * @param {string} name
 * @param {string} label
 * @param {string} help
 * @param {FieldOptions} [options]
 */
export function field(name, label, help, options = {}) {
  const id = `uh-${name}`;
  const shared = { id, name, maxlength: 400, "aria-describedby": `${id}-help ${id}-error` };
  const input = options.lines
    ? el("textarea", { ...shared, rows: options.lines })
    : el("input", { ...shared, type: "text" });
  OPTIONS.set(input, options);
  const optional = el("span", { class: "uh-field__optional" }, " if known");
  return el(
    "div",
    { class: "uh-field" },
    el("label", { for: id }, label, options.optional ? optional : null),
    input,
    el("p", { class: "uh-field__help", id: `${id}-help` }, help),
    el("p", { class: "uh-field__error", id: `${id}-error` }),
  );
}

/**
 * What was entered, or null after saying beside the field why it will not do.
 *
 * @param {HTMLElement} form
 * @param {string} name
 * @returns {string|null}
 */
export function readField(form, name) {
  const input = /** @type {HTMLInputElement} */ (form.querySelector(`#uh-${name}`));
  const { optional = false, needed = "to start", refuse = () => "" } = OPTIONS.get(input) ?? {};
  const entry = input.value.trim();
  const missing = entry === "" && !optional;
  const wrong = missing ? `Nothing is entered. This is needed ${needed}.` : entry && refuse(entry);
  const error = form.querySelector(`#uh-${name}-error`);
  if (error) error.textContent = wrong;
  if (wrong) input.setAttribute("aria-invalid", "true");
  else input.removeAttribute("aria-invalid");
  return wrong ? null : entry;
}
