// A new card: the vehicle and the complaint in the owner's words.

import { notice } from "../app.js";
import { el } from "../kit/dom.js";
import { field, readField } from "../kit/field.js";
import { counted } from "../record/left.js";
import { handedOver, takeOver } from "./hand-over.js";
import { readIndex } from "./manual.js";
import { isFor } from "./order.js";
import { warningView } from "../warning-view.js";

/** @import { App, View } from "../app.js" */
/** @import { HandOver } from "./hand-over.js" */
/** @import { FaultEntry, Index, Vehicle } from "../types.js" */

/**
 * @param {App} app
 * @returns {Promise<View>}
 */
export async function newCardView(app) {
  const index = await readIndex();
  const family = el(
    "select",
    { id: "uh-family", onchange: () => fitFamily(form, index), "aria-describedby": "uh-family-error" },
    el("option", { value: "" }, "Choose it"),
    ...index.families.map(({ id, title }) => el("option", { value: id }, title)),
  );
  const trouble = el("div");
  const handed = await handedOver();
  const form = el(
    "form",
    { class: "uh-card__form", novalidate: true, autocomplete: "off" },
    el(
      "fieldset",
      { class: "uh-fieldset" },
      el("legend", {}, "Vehicle"),
      field("identification", "Identification", "Model, colour, number plate: what the shop calls it."),
      el(
        "div",
        { class: "uh-field" },
        el("label", { for: "uh-family" }, "Unit family"),
        family,
        el("p", { class: "uh-field__error", id: "uh-family-error" }),
      ),
      field("tyre", "Tyre", "As on its wall. Leave it empty while it is not known.", { optional: true }),
      field("axle", "Axle ratio", "Leave it empty while it is not known.", { optional: true }),
      field("odometer", "Odometer", "With its unit, such as 84210 km.", { refuse: wrongOdometer }),
    ),
    el(
      "fieldset",
      { class: "uh-fieldset" },
      el("legend", {}, "Complaint"),
      field("complaint", "In the owner’s words", "Write it as it was said.", { lines: 3 }),
      el("div", { class: "uh-field", id: "uh-faults" }),
    ),
    trouble,
    el("button", { class: "uh-button", type: "submit" }, "Start the card"),
  );
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    void start(app, form, index, handed).catch((error) => trouble.replaceChildren(notice(error.message)));
  });
  fitFamily(form, index);
  if (handed) fillIn(form, index, handed);
  return { node: el("div", {}, el("h2", { tabindex: -1 }, "A new card"), ...(await warningView(app)), form) };
}

/**
 * Shows what belongs to the chosen family: its usual tyre and axle, its known complaints.
 *
 * @param {HTMLFormElement} form
 * @param {Index} index
 */
function fitFamily(form, index) {
  const chosen = familyOf(form, index);
  for (const name of /** @type {const} */ (["tyre", "axle"])) {
    const help = form.querySelector(`#uh-${name}-help`);
    const usual = chosen ? ` The shift points of this family are stated for ${chosen[name]}.` : "";
    if (help) help.textContent = `Leave it empty while it is not known.${usual}`;
  }
  const faults = index.faults.filter((fault) => chosen && isFor(fault, chosen.id));
  const choices = faults.map((fault) => choice(fault.id, fault.complaint));
  const list = form.querySelector("#uh-faults");
  if (faults.length === 0) return list?.replaceChildren();
  return list?.replaceChildren(
    el("p", { id: "uh-faults-name" }, "Is it one of these? Then the next check is worked out."),
    el(
      "ul",
      { class: "uh-card__choices", role: "radiogroup", "aria-labelledby": "uh-faults-name" },
      ...choices,
      choice("", "None of these"),
    ),
  );
}

/**
 * What a complaint's page handed over: its family and the complaint; the rest is the person's to enter.
 *
 * @param {HTMLFormElement} form
 * @param {Index} index
 * @param {HandOver} handed
 */
function fillIn(form, index, handed) {
  const family = /** @type {HTMLSelectElement} */ (form.querySelector("#uh-family"));
  family.value = handed.family;
  fitFamily(form, index);
  const radio = [...form.querySelectorAll("input")].find(({ name, value }) => name === "fault" && value === handed.fault);
  if (radio) radio.checked = true;
  const words = /** @type {HTMLTextAreaElement} */ (form.querySelector("#uh-complaint"));
  words.value = index.faults.find(({ id }) => id === handed.fault)?.complaint ?? "";
  const taken = `${counted(handed.results.length, "result")} of the fault finding ${handed.results.length === 1 ? "comes" : "come"} onto the card.`;
  if (handed.results.length > 0) form.prepend(el("p", { class: "uh-facts", role: "status" }, taken));
}

/**
 * @param {string} id
 * @param {string} words
 */
function choice(id, words) {
  const radio = el("input", { type: "radio", name: "fault", value: id, checked: id === "" });
  return el("li", { role: "presentation" }, el("label", {}, radio, el("span", {}, words)));
}

/**
 * @param {HTMLFormElement} form
 * @param {Index} index
 */
function familyOf(form, index) {
  const select = /** @type {HTMLSelectElement|null} */ (form.querySelector("#uh-family"));
  return index.families.find(({ id }) => id === select?.value);
}

/**
 * @param {App} app
 * @param {HTMLFormElement} form
 * @param {Index} index
 * @param {HandOver|null} handed
 */
async function start(app, form, index, handed) {
  const names = ["identification", "tyre", "axle", "odometer", "complaint"];
  const entries = Object.fromEntries(names.map((name) => [name, readField(form, name)]));
  const family = familyOf(form, index);
  sayFamily(form, family ? "" : "No family is chosen. It decides the values and the procedures.");
  const wrong = family ? names.find((name) => entries[name] === null) : "family";
  if (wrong) return form.querySelector(/** @type {"input"} */ (`#uh-${wrong}`))?.focus();
  const { complaint, ...rest } = entries;
  const marks = family?.between_marks ?? "";
  const vehicle = { ...rest, family: family?.id, family_title: family?.title, between_marks: marks };
  const fault = String(new FormData(form).get("fault") ?? "");
  const session = await app.session(crypto.randomUUID());
  const value = { vehicle: /** @type {Vehicle} */ (vehicle), complaint, fault };
  const stored = await session.record("card", { who: app.initials, kind: "start", value });
  if (stored) {
    if (handed?.fault === fault) await takeOver(app, session, handed);
    return app.go(`#card/${session.card}/${fault ? "fault" : "add"}`);
  }
  const words = session.trouble;
  session.waiting.clear(); // nothing was begun; the form is still there to send again
  app.update();
  throw new Error(words);
}

/**
 * @param {HTMLFormElement} form
 * @param {string} words
 */
function sayFamily(form, words) {
  const select = form.querySelector("#uh-family");
  if (words) select?.setAttribute("aria-invalid", "true");
  else select?.removeAttribute("aria-invalid");
  const error = form.querySelector("#uh-family-error");
  if (error) error.textContent = words;
}

/** @param {string} entry */
export function wrongOdometer(entry) {
  if (!/^[\d .,']+$/.test(entry)) return "";
  return `“${entry}” has no unit. Write ${entry} km or ${entry} miles.`;
}
