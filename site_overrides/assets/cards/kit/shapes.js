// The six shapes that tell how a step stands. Shape and word, never colour.

import { drawing, el } from "./dom.js";

/** @import { Shape, StepState } from "../types.js" */

const BOX = "M4 4h56v56h-56z";

/** @type {Record<Shape, Record<string, string>>} */
const PATHS = {
  todo: { "uh-tick__box": BOX },
  storing: { "uh-tick__box": BOX, "uh-tick__fill": "M4 60L60 4V60z" },
  stored: { "uh-tick__box": BOX, "uh-tick__fill": BOX, "uh-tick__mark": "M15 33l12 13L49 18" },
  checked: {
    "uh-tick__box": BOX,
    "uh-tick__fill": BOX,
    "uh-tick__mark": "M9 35l10 11L38 18M28 41l5 5L55 18",
  },
  "not-needed": { "uh-tick__box": BOX, "uh-tick__mark": "M4 4L60 60M60 4L4 60" },
  "handed-back": {
    "uh-tick__box": BOX,
    "uh-tick__mark": "M22 24c0-13 20-13 20 0 0 8-10 7-10 15M32 45v6",
  },
};

/** @type {Record<Shape, string>} */
const WORDS = {
  todo: "To do",
  storing: "Being stored",
  stored: "Done",
  checked: "Checked",
  "not-needed": "Not needed",
  "handed-back": "Handed back",
};

/**
 * @param {Shape} shape
 */
export function shapeDrawing(shape) {
  return drawing("uh-tick__shape", "0 0 64 64", PATHS[shape]);
}

/**
 * The word for how a step stands.
 *
 * @param {StepState} step
 * @param {Shape} shape
 */
export function shapeWord(step, shape) {
  const wants = shape === "stored" && step.text.wants_second_check;
  return wants ? "Done, check wanted" : WORDS[shape];
}

/**
 * A small shape with its word for screen readers, for lists and paper.
 *
 * @param {StepState} step
 * @param {Shape} shape
 */
export function smallShape(step, shape) {
  const word = el("span", { class: "uh-unseen" }, `${shapeWord(step, shape)}: `);
  return el(
    "span",
    { class: "uh-tick uh-tick--small", "data-state": shape },
    shapeDrawing(shape),
    word,
  );
}
