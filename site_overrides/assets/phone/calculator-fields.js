/** Reads and fills the fields of a calculator's form, and writes what is wrong beside them. */

/** @typedef {HTMLInputElement | HTMLSelectElement} Control */
/** @typedef {import("./calculator-worker.js").Wrong} Wrong */

/**
 * @param {HTMLFormElement} form
 * @returns {Record<string, string>} what stands in the fields, by name
 */
export function entriesOf(form) {
  return Object.fromEntries([...new FormData(form)].map(([name, value]) => [name, String(value)]));
}

/**
 * Fills the fields that the page's address names. Where it names any, what the others hold of the
 * worked example is taken out: it must not stand there as if it had been measured.
 * @param {HTMLFormElement} form
 * @param {URLSearchParams} given
 * @returns {string[]} the fields that were named
 */
export function fillFrom(form, given) {
  const named = [...given].filter(([name]) => control(form, name));
  if (named.length === 0) return [];
  for (const field of controls(form)) if ("example" in field.dataset) field.value = "";
  for (const [name, text] of named) fill(form, name, text);
  return named.map(([name]) => name);
}

/**
 * Writes each error beside its field; fields without one are cleared. What was typed stays. A field
 * that nobody filled in yet is not called wrong: the answer says that it is wanted.
 * @param {HTMLFormElement} form
 * @param {Record<string, Wrong>} errors by field name
 * @param {Set<string>} touched names of the fields that were filled in or changed
 */
export function showErrors(form, errors, touched) {
  for (const field of controls(form)) {
    const place = errorPlace(field);
    if (!place) continue;
    const isUntouched = field.value === "" && !touched.has(field.name);
    const error = isUntouched ? undefined : errors[field.name];
    place.textContent = error ? `${error.wrong} ${error.mend}` : "";
    if (error) field.setAttribute("aria-invalid", "true");
    else field.removeAttribute("aria-invalid");
    if (error) field.closest("details")?.setAttribute("open", "");
  }
}

/**
 * A quantity is split into number and unit where the unit is one of the field's choices; any other
 * text is put in as it is, and the calculator reads or refuses it.
 * @param {HTMLFormElement} form
 * @param {string} name
 * @param {string} text
 */
function fill(form, name, text) {
  const field = control(form, name);
  const units = control(form, `${name}.unit`);
  if (!field) return;
  field.value = text;
  if (units instanceof HTMLSelectElement) splitUnit(field, units, text);
  // What a family page gives may stay folded: its first line says it.
  if (text) field.closest("details:not(.uh-more--given)")?.setAttribute("open", "");
}

/**
 * @param {Control} field
 * @param {HTMLSelectElement} units
 * @param {string} text
 */
function splitUnit(field, units, text) {
  const plain = (/** @type {string} */ unit) => unit.replaceAll("*", "·").replaceAll(/\s/g, "");
  const choice = [...units.options]
    .map(({ value }) => value)
    .sort((one, other) => other.length - one.length)
    .find((value) => plain(text).endsWith(plain(value)));
  const number = choice && numberBefore(text, plain(choice), plain);
  if (!choice || !number) return;
  field.value = number;
  units.value = choice;
}

/**
 * What stands before the unit, if that is digits, fractions, a sign and "to" only.
 * @param {string} text
 * @param {string} unit
 * @param {(text: string) => string} plain
 */
function numberBefore(text, unit, plain) {
  for (let end = text.length; end > 0; end--) {
    if (plain(text.slice(end)) === unit) return /^[\d\s.,/+-]+(to[\d\s.,/+-]+)?$/.test(text.slice(0, end)) && text.slice(0, end).trim();
  }
  return "";
}

/**
 * @param {HTMLFormElement} form
 * @returns {Control[]}
 */
function controls(form) {
  return [...form.elements].filter((each) => each instanceof HTMLInputElement || each instanceof HTMLSelectElement);
}

/**
 * @param {HTMLFormElement} form
 * @param {string} name
 */
const control = (form, name) => controls(form).find((each) => each.name === name);

/** @param {Control} field */
function errorPlace(field) {
  const ids = field.getAttribute("aria-describedby")?.split(" ") ?? [];
  const id = ids.find((each) => each.endsWith("-error"));
  return id ? document.getElementById(id) : null;
}
