// One choice out of a few, as sentences to press.

import { el } from "./dom.js";

let count = 0;

/**
 * @param {string} question
 * @param {Record<string, string>} words by what is chosen
 * @param {string} [chosen]
 */
export function radios(question, words, chosen = "") {
  const name = `uh-choice-${(count += 1)}`;
  const error = el("p", { class: "uh-field__error", id: `${name}-error`, role: "alert" });
  const lines = Object.entries(words).map(([value, sentence]) => {
    const radio = el("input", { type: "radio", name, value, checked: value === chosen });
    return el("li", {}, el("label", {}, radio, el("span", {}, sentence)));
  });
  const node = el(
    "fieldset",
    { class: "uh-fieldset uh-card__one", "aria-describedby": `${name}-error` },
    el("legend", {}, question),
    el("ul", { class: "uh-card__choices" }, ...lines),
    error,
  );
  const value = () => node.querySelector("input:checked")?.getAttribute("value") ?? "";
  /** What is chosen, or null after saying that nothing is. @param {string} wrong */
  const need = (wrong) => {
    const found = value();
    error.textContent = found === "" ? wrong : "";
    if (found === "") node.querySelector("input")?.focus();
    return found === "" ? null : found;
  };
  return { node, value, need };
}
