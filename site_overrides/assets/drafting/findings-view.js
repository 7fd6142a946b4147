// What was found in the draft, and what it causes in other pages.

import { el } from "../cards/kit/dom.js";

/** @import { Finding, Looked } from "./types.js" */

const SEVERITY = { stop: "Stops the build", look: "To look at" };

/** Findings shown at once: a text full of faults is mended from its top. */
const MOST = 50;

/**
 * @typedef {object} Acts
 * @property {(finding: Finding) => void} go
 * @property {(finding: Finding) => void} mend
 */

/**
 * @param {number} count
 * @param {string} thing
 */
const counted = (count, thing) => `${count} ${thing}${count === 1 ? "" : "s"}`;

/**
 * One sentence for all of it.
 *
 * @param {Looked} looked
 */
export function inOneSentence({ own, elsewhere }) {
  const pages = new Set(elsewhere.map(({ file }) => file)).size;
  const stops = own.filter(({ severity }) => severity === "stop").length;
  const others = pages ? ` It breaks ${counted(pages, "other page")}.` : "";
  if (own.length === 0) return `Nothing found in this page.${others}`;
  const stopping = stops ? `, ${stops} of them stop${stops === 1 ? "s" : ""} the build` : "";
  return `${counted(own.length, "finding")}${own.length === 1 ? (stops ? " that stops the build" : "") : stopping}.${others}`;
}

/**
 * @param {Looked} looked
 * @param {Acts} acts
 * @returns {Node[]}
 */
export function findingsNodes({ own, elsewhere }, acts) {
  return [...ownNodes(own, acts), ...elsewhereNodes(elsewhere)];
}

/**
 * @param {Finding[]} own
 * @param {Acts} acts
 */
function ownNodes(own, acts) {
  if (own.length === 0) return [];
  const items = own.slice(0, MOST).map((finding) => ownItem(finding, acts));
  const more = own.length - items.length;
  const rest = more > 0 ? [el("p", {}, `${counted(more, "more finding")} below these.`)] : [];
  return [el("ol", { class: "uh-desk__found" }, ...items), ...rest];
}

/**
 * @param {Finding} finding
 * @param {Acts} acts
 */
function ownItem(finding, acts) {
  const go = el("button", { class: "uh-desk__go", type: "button", onclick: () => acts.go(finding) }, `Line ${finding.line}`);
  const mend = finding.edit
    ? el("button", { class: "uh-button uh-button--plain uh-desk__mend", type: "button", onclick: () => acts.mend(finding) }, "Mend this")
    : null;
  return el(
    "li",
    {},
    el("p", { class: "uh-desk__where" }, go, " ", el("strong", {}, SEVERITY[finding.severity])),
    ...said(finding),
    mend,
  );
}

/** @param {Finding} finding */
function said({ written, wrong, mend }) {
  const quote = written ? el("p", { class: "uh-desk__written" }, el("code", {}, written)) : null;
  return [quote, el("p", {}, wrong), el("p", {}, mend)];
}

/** @param {Finding[]} elsewhere */
function elsewhereNodes(elsewhere) {
  if (elsewhere.length === 0) return [];
  const files = [...new Set(elsewhere.map(({ file }) => file))];
  const heading = `This change breaks ${counted(files.length, "other page")}`;
  const items = elsewhere.slice(0, MOST).map((finding) =>
    el(
      "li",
      {},
      el("p", { class: "uh-desk__where" }, el("code", {}, finding.file), ` line ${finding.line} `, el("strong", {}, SEVERITY[finding.severity])),
      ...said(finding),
    ),
  );
  return [el("h3", {}, heading), el("ol", { class: "uh-desk__found" }, ...items)];
}
