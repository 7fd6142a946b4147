/** Folded groups say in their first line what their fields hold; this keeps that line true. */

/**
 * Writes into every `data-value-of` what its field holds now; the style hides the empty ones.
 * @param {HTMLFormElement} form
 */
export function tellFolded(form) {
  for (const place of form.querySelectorAll("[data-value-of]")) {
    const name = place.getAttribute("data-value-of") ?? "";
    const words = held(form, name);
    if (place.textContent !== words) place.textContent = words;
  }
}

/**
 * @param {HTMLFormElement} form
 * @param {string} name
 * @returns {string} number and unit as typed, or the choice in words
 */
function held(form, name) {
  const field = form.elements.namedItem(name);
  const units = form.elements.namedItem(`${name}.unit`);
  if (field instanceof HTMLSelectElement) return field.value && (field.selectedOptions[0]?.text ?? "");
  if (!(field instanceof HTMLInputElement)) return "";
  const text = field.value.trim();
  const isBare = text !== "" && /^[\d\s.,/+-]+(to[\d\s.,/+-]+)?$/.test(text);
  return isBare && units instanceof HTMLSelectElement ? `${text} ${inShort(units)}` : text;
}

/**
 * The chosen unit as it is written behind a number: "lbf·in" of "pound-force inches (lbf·in)".
 * @param {HTMLSelectElement} units
 */
function inShort({ selectedOptions: [chosen], value }) {
  const words = chosen?.text ?? value;
  return /\(([^()]+)\)$/.exec(words)?.[1] ?? words;
}
