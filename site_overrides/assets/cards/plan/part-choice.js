// A part on the list of what to fetch: which of its look-alikes it is must be told before it is fitted.

import { timeWords } from "../app.js";
import { el } from "../kit/dom.js";

/** @import { App } from "../app.js" */
/** @import { Session } from "../record/session.js" */
/** @import { Mark, PartAsked } from "../types.js" */

/**
 * @param {PartAsked} part
 * @param {(Mark & {variant: string, how: string})|null} told
 * @param {App} app
 * @param {Session} session
 */
export function partChoice(part, told, app, session) {
  const name = `uh-part-${part.id}`;
  const record = (/** @type {string} */ variant, /** @type {string} */ how) => {
    const value = { part: part.id, variant, how };
    void session.record(`part|${part.id}`, { who: app.initials, kind: "identify", value });
  };
  if (part.variants.length === 0) return el("li", {}, el("p", {}, part.name));
  const choices = part.variants.map((variant) => {
    const how = [...variant.measures, variant.tell].join("; ");
    const chosen = told?.variant === variant.name;
    const pick = () => record(variant.name, how);
    const radio = el("input", { type: "radio", name, checked: chosen, onchange: pick });
    const words = el("span", {}, variant.name, el("br"), el("small", {}, how));
    return el("li", {}, el("label", {}, radio, words));
  });
  const said = told
    ? `It is “${told.variant}”, told by ${told.who}, ${timeWords(told.at)}.`
    : "Not identified yet. Measure it, then choose.";
  return el(
    "li",
    { class: "uh-card__part" },
    el(
      "fieldset",
      { class: "uh-fieldset" },
      el("legend", {}, `${part.name}: which one is it?`),
      el("ul", {}, ...choices),
      el("p", { class: "uh-facts", role: "status" }, said),
    ),
  );
}
