// A neighbour of the step in hand, one line that leads to it.

import { el } from "../kit/dom.js";
import { smallShape } from "../kit/shapes.js";

/** @import { Shape, StepState } from "../types.js" */

/**
 * @param {StepState} step
 * @param {Shape} shape
 * @param {string} procedure its title where that is another one, "" otherwise
 * @param {() => void} go
 */
export function stepRow(step, shape, procedure, go) {
  const words = `${step.text.number}. ${step.text.text}`;
  return el(
    "button",
    { class: "uh-card__row", type: "button", onclick: go },
    smallShape(step, shape),
    el("span", {}, procedure ? `${procedure}: ${words}` : words),
  );
}
