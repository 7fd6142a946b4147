// The sentences that a finding's urgency and decision are shown in.

/** @import { Urgency } from "../types.js" */

/** In the order of their weight, gravest first. @type {Record<Urgency, string>} */
export const URGENCY_WORDS = {
  "before driving": "Before it is driven",
  "this visit": "On this visit",
  "next service": "At the next service",
  "to know": "Only to know",
};

/** @type {Record<"done"|"advised"|"declined", string>} */
export const DECISION_WORDS = { done: "Done", advised: "Advised", declined: "Declined" };
