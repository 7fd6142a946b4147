// A step's text with entries in the place of the sentences that ask for readings, and with calculators
// that know the vehicle.

import { el } from "../kit/dom.js";
import { safeFragment } from "../kit/safe-html.js";
import { calculatorAddress, isCalculator } from "../link/to-calculator.js";
import { siteRoot, stepBase } from "../plan/manual.js";
import { steps } from "../record/fold.js";

/** @import { CardState, Job, StepState } from "../types.js" */

/**
 * @param {CardState} card
 * @param {StepState} step
 * @param {Node[]} readings
 */
export function stepWords(card, step, readings) {
  const words = el("div", { class: "uh-card__do" }, safeFragment(step.text.html, stepBase()));
  const [asked, ...rest] = words.querySelectorAll(".uh-step__reading");
  if (asked) asked.replaceWith(...readings);
  else words.append(...readings);
  for (const sentence of rest) sentence.remove();
  // A link to the reading's own sentence would lead away from the entry beside it.
  for (const link of words.querySelectorAll('a[href*="#reading-"]')) link.replaceWith(...link.childNodes);
  const at = steps(card).indexOf(step) + 1;
  for (const link of words.querySelectorAll("a")) {
    if (isCalculator(link.href, siteRoot())) link.href = calculatorAddress(link.href, card, at);
  }
  return words;
}

/**
 * The procedure's calculators, small; null where it has none or the step names them itself.
 *
 * @param {CardState} card
 * @param {Job} job
 * @param {StepState} step
 */
export function calculatorLine(card, job, step) {
  const at = steps(card).indexOf(step) + 1;
  const links = job.text.calculators.flatMap(({ name, url }) => {
    const address = URL.canParse(url, stepBase()) ? new URL(url, stepBase()) : null;
    if (!address || !isCalculator(address.href, siteRoot())) return [];
    const folder = address.pathname.split("/").filter(Boolean).at(-1) ?? "";
    if (step.text.html.includes(`calculators/${folder}/`)) return [];
    return [el("a", { href: calculatorAddress(address.href, card, at) }, name)];
  });
  if (links.length === 0) return null;
  return el("p", { class: "uh-card__calculators" }, "Calculate: ", ...links);
}
