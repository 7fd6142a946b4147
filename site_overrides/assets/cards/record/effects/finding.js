// What was found, what the owner decided, and the photos of it.

import { jobOf, numberIn, stepOf } from "./job.js";
import { mark, note, text } from "./mark.js";

/** @import { CardEvent, CardState, NamedCause, Photo, Urgency } from "../../types.js" */

/** In the order of their weight, gravest first. @type {readonly Urgency[]} */
export const URGENCIES = ["before driving", "this visit", "next service", "to know"];

/** @type {readonly string[]} */
export const DECISIONS = ["done", "advised", "declined"];

/** @type {Record<string, (card: CardState, event: CardEvent) => void>} */
export const FINDING_EFFECTS = {
  finding(card, event) {
    const urgency = /** @type {Urgency} */ (text(event, "urgency"));
    if (!URGENCIES.includes(urgency)) return;
    const step = stepOf(card, event);
    card.findings.push({
      id: event.id,
      mark: mark(event),
      job: text(event, "job"),
      step: numberIn(jobOf(card, event), step),
      what: text(event, "what"),
      urgency,
      decision: null,
      photos: [],
      cause: causeIn(event),
    });
    if (step) note(step, event, "the finding");
  },
  decide(card, event) {
    const finding = card.findings.find(({ id }) => id === event.value.of);
    const decision = /** @type {"done"|"advised"|"declined"} */ (text(event, "decision"));
    if (!finding || !DECISIONS.includes(decision)) return;
    finding.decision = { ...mark(event), decision, note: text(event, "note") };
  },
  photo(card, event) {
    const photo = photoOf(event);
    const finding = card.findings.find(({ id }) => id === event.value.finding);
    if (finding) return void finding.photos.push(photo);
    const step = stepOf(card, event);
    if (!step) return;
    step.photos.push(photo);
    note(step, event, "the photo");
  },
};

/**
 * @param {CardEvent} event
 * @returns {Photo}
 */
function photoOf(event) {
  const number = (/** @type {string} */ name) => Number(event.value[name]);
  return {
    id: event.id,
    mark: mark(event),
    type: text(event, "type"),
    sha256: text(event, "sha256"),
    width: number("width"),
    height: number("height"),
    bytes: number("bytes"),
  };
}

/**
 * The cause that a finding names, null where it names none.
 *
 * @param {CardEvent} event
 * @returns {NamedCause|null}
 */
function causeIn({ value: { fault, cause, name, likely } }) {
  if (typeof fault !== "string" || typeof cause !== "string") return null;
  return { fault, id: cause, name: String(name ?? cause), likely: String(likely ?? "") };
}
