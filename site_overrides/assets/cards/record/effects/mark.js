// What every effect takes from an event.

/** @import { CardEvent, Mark, StepState } from "../../types.js" */

/**
 * Who did it, when.
 *
 * @param {CardEvent} event
 * @returns {Mark}
 */
export function mark(event) {
  return { event: event.id, who: event.who, at: event.at };
}

/**
 * A text of the event's value.
 *
 * @param {CardEvent} event
 * @param {string} name
 */
export function text(event, name) {
  return String(event.value[name]);
}

/**
 * Makes an event what undo would take back from a step.
 *
 * @param {StepState} step
 * @param {CardEvent} event
 * @param {string} what
 */
export function note(step, event, what) {
  step.last = { event: event.id, what: `${what} by ${event.who}` };
}
