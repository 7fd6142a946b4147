// The vehicle of a card, put right later. What stood before stays among the card's entries.

import { cardName, notStored } from "../app.js";
import { el } from "../kit/dom.js";
import { field, readField } from "../kit/field.js";
import { readIndex } from "../plan/manual.js";
import { wrongOdometer } from "../plan/new-card-view.js";

/** @import { App, View } from "../app.js" */
/** @import { Session } from "../record/session.js" */
/** @import { CardState, FamilyEntry, Vehicle } from "../types.js" */

const NAMES = /** @type {const} */ (["identification", "tyre", "axle", "odometer"]);

const NEEDED = "for the card and for the owner’s sheet";

/**
 * @param {App} app
 * @param {Session} session
 * @param {CardState} card
 * @returns {Promise<View>}
 */
export async function vehicleView(app, session, card) {
  const { fixed, families } = await familiesFor(card);
  const trouble = el("div");
  const said = el("p", { role: "status" });
  const form = vehicleForm(card.vehicle, families, fixed);
  const save = async () => {
    said.textContent = "";
    const vehicle = entered(form, card.vehicle, families);
    if (vehicle === null) return;
    const stored = await session.record("card", { who: app.initials, kind: "vehicle", value: { vehicle } });
    if (stored) said.textContent = `Stored: ${cardName({ ...card, vehicle })}.`;
  };
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    void save();
  });
  const back = el("a", { class: "uh-button uh-button--plain", href: `#card/${card.id}` }, "Back to the work");
  const closed = el("p", {}, "The card is closed. Open it again to change the vehicle.");
  const body = card.closed ? [closed] : [form, trouble, said];
  const update = () => {
    trouble.replaceChildren(...notStored(session));
  };
  return { node: el("section", {}, el("h2", { tabindex: -1 }, "Vehicle"), ...body, el("p", {}, back)), update, awake: true };
}

/**
 * The families to choose from, or why there is no choice.
 *
 * @param {CardState} card
 * @returns {Promise<{fixed: string, families: FamilyEntry[]}>}
 */
async function familiesFor({ jobs, vehicle }) {
  const own = { id: vehicle.family, title: vehicle.family_title, tyre: "", axle: "" };
  if (jobs.length > 0) {
    const fixed = `It stays: the procedures on this card are for the ${vehicle.family_title}. For another unit start another card.`;
    return { fixed, families: [own] };
  }
  try {
    return { fixed: "", families: (await readIndex()).families };
  } catch (error) {
    return { fixed: error instanceof Error ? error.message : String(error), families: [own] };
  }
}

/**
 * @param {Vehicle} vehicle
 * @param {FamilyEntry[]} families
 * @param {string} fixed why the family cannot be changed, "" where it can
 */
function vehicleForm(vehicle, families, fixed) {
  const options = families.map(({ id, title }) => el("option", { value: id, selected: id === vehicle.family }, title));
  const described = { id: "uh-family", "aria-describedby": "uh-family-help" };
  const family = el("select", { ...described, disabled: fixed !== "" }, ...options);
  const form = el(
    "form",
    { class: "uh-card__form", novalidate: true, autocomplete: "off" },
    field("identification", "Identification", "Model, colour, number plate: what the shop calls it.", { needed: NEEDED }),
    el(
      "div",
      { class: "uh-field" },
      el("label", { for: "uh-family" }, "Unit family"),
      family,
      el("p", { class: "uh-field__help", id: "uh-family-help" }, fixed || "It decides the values and the procedures."),
    ),
    field("tyre", "Tyre", "As on its wall.", { optional: true }),
    field("axle", "Axle ratio", "Leave it empty while it is not known.", { optional: true }),
    field("odometer", "Odometer", "With its unit, such as 84210 km.", { needed: NEEDED, refuse: wrongOdometer }),
    el("button", { class: "uh-button", type: "submit" }, "Store the vehicle"),
  );
  for (const name of NAMES) inputOf(form, name).value = vehicle[name] ?? "";
  return form;
}

/**
 * The vehicle as it was entered, or null where a field will not do.
 *
 * @param {HTMLFormElement} form
 * @param {Vehicle} before
 * @param {FamilyEntry[]} families
 * @returns {Vehicle|null}
 */
function entered(form, before, families) {
  const entries = NAMES.map((name) => [name, readField(form, name)]);
  const wrong = entries.find(([, entry]) => entry === null);
  if (wrong) {
    inputOf(form, String(wrong[0])).focus();
    return null;
  }
  const chosen = /** @type {HTMLSelectElement} */ (form.querySelector("#uh-family")).value;
  const family = families.find(({ id }) => id === chosen);
  const unit =
    family && family.id !== before.family
      ? { family: family.id, family_title: family.title, between_marks: family.between_marks ?? "" }
      : {};
  return { ...before, ...Object.fromEntries(entries), ...unit };
}

/**
 * @param {HTMLFormElement} form
 * @param {string} name
 */
function inputOf(form, name) {
  return /** @type {HTMLInputElement} */ (form.querySelector(`#uh-${name}`));
}
