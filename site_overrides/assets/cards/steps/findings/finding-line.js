// A finding as it stands: what, how soon, who found it, what became of it.

import { timeWords } from "../../app.js";
import { el } from "../../kit/dom.js";
import { DECISION_WORDS, URGENCY_WORDS } from "../../kit/finding-words.js";

/** @import { FindingState } from "../../types.js" */

/**
 * @param {FindingState} finding
 * @param {...(Node|string)} more
 */
export function findingLine(finding, ...more) {
  const { mark, what, urgency, decision } = finding;
  return el(
    "li",
    { class: "uh-finding" },
    el("p", { class: "uh-finding__what" }, what),
    el("p", {}, el("strong", {}, `${URGENCY_WORDS[urgency]}.`), ` Found by ${mark.who}, ${timeWords(mark.at)}.`),
    decision ? el("p", {}, decisionWords(decision)) : null,
    ...more,
  );
}

/** @param {NonNullable<FindingState["decision"]>} decision */
function decisionWords({ decision, who, at, note }) {
  return `${DECISION_WORDS[decision]}: ${who}, ${timeWords(at)}.${note ? ` ${note}` : ""}`;
}

/**
 * Those that were found on a step.
 *
 * @param {FindingState[]} findings
 * @param {{job: string, text: {number: number}}} step
 */
export function findingsOf(findings, { job, text }) {
  return findings.filter((finding) => finding.job === job && finding.step === text.number);
}
