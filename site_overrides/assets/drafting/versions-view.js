// How the draft was before, and going back to that.

import { timeWords } from "../cards/app.js";
import { el } from "../cards/kit/dom.js";
import { versionsOf } from "./store.js";

/** @import { Version } from "./types.js" */

/**
 * Shows the earlier texts of a draft below one another.
 *
 * @param {string} draft its id
 * @param {(version: Version) => void} takeBack
 */
export async function versionsNode(draft, takeBack) {
  const versions = await versionsOf(draft);
  if (versions.length === 0) return el("p", {}, "There is no earlier text yet: one is kept every minute of writing.");
  return el("ol", { class: "uh-desk__found" }, ...versions.map((version) => item(version, takeBack)));
}

/**
 * @param {Version} version
 * @param {(version: Version) => void} takeBack
 */
function item(version, takeBack) {
  const lines = version.text.split("\n").length;
  const why = version.why ? `, ${version.why}` : "";
  return el(
    "li",
    {},
    el("p", {}, `${timeWords(version.at)}${why}. ${lines} lines.`),
    el("details", {}, el("summary", {}, "Read it"), el("pre", { tabindex: 0, "aria-label": "Earlier text" }, version.text)),
    el("button", { class: "uh-button uh-button--plain", type: "button", onclick: () => takeBack(version) }, "Go back to this"),
  );
}
