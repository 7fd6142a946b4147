// A caution as a signal-word panel, the same as on the manual's pages.

import { drawing, el } from "./dom.js";

/** @import { Caution } from "../types.js" */

const TRIANGLE =
  "M12.3 2a2 2 0 0 1 3.4 0l11 18.4a2 2 0 0 1-1.7 3.1H3a2 2 0 0 1-1.7-3.1zM12.5 8h3l-.6 8h-1.8zM14 17.4a1.7 1.7 0 1 0 0 3.4 1.7 1.7 0 0 0 0-3.4z";
const ROUND =
  "M12 1a11 11 0 1 0 0 22 11 11 0 0 0 0-22zM10.5 5h3l-.6 9h-1.8zM12 16a1.7 1.7 0 1 0 0 3.4 1.7 1.7 0 0 0 0-3.4z";

/** @param {Caution} caution */
export function hazardPanel({ word, harm, avoid }) {
  const notice = word === "notice";
  const sign = drawing("uh-sign", notice ? "0 0 24 24" : "0 0 28 24", { "": notice ? ROUND : TRIANGLE });
  sign.firstElementChild?.setAttribute("fill-rule", "evenodd");
  const spoken = `${word[0].toUpperCase()}${word.slice(1)}: ${harm}`;
  return el(
    "aside",
    { class: `uh-hazard uh-hazard--${word}`, role: "note", "aria-label": spoken },
    el("p", { class: "uh-hazard__word" }, sign, word.toUpperCase()),
    el("p", { class: "uh-hazard__harm" }, harm),
    el("p", { class: "uh-hazard__avoid" }, avoid),
  );
}
