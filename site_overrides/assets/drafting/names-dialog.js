// Offers what the text may refer to, with a search: nobody has to know an id by heart.

import { el } from "../cards/kit/dom.js";
import { matching } from "./pieces.js";

/** @import { Name } from "./types.js" */

const SHOWN = 30;

const SCHEMES = {
  torque: "Torque",
  reading: "Reading",
  tool: "Tool",
  part: "Part",
  procedure: "Procedure",
  hazard: "Hazard",
  fault: "Fault",
  family: "Unit family",
  calc: "Calculator",
};

/**
 * Asks for one of the names.
 *
 * @param {HTMLElement} place where the dialog is hung in
 * @param {Promise<Name[]>} asked
 * @param {string} scheme what is offered first; "" for all
 * @returns {Promise<Name | null>} null where it was closed
 */
export async function chooseName(place, asked, scheme) {
  const list = el("ul", { class: "uh-contents uh-desk__names" });
  const words = el("input", { id: "name-words", type: "search", autocomplete: "off", autocapitalize: "none" });
  const sort = el(
    "select",
    { id: "name-scheme" },
    el("option", { value: "" }, "Everything"),
    ...Object.entries(SCHEMES).map(([value, label]) => el("option", { value, selected: value === scheme }, label)),
  );
  const told = el("p", { role: "status" }, "Looking");
  const close = el("button", { class: "uh-button uh-button--plain", type: "button" }, "Close");
  const dialog = el(
    "dialog",
    { class: "uh-desk__dialog", "aria-labelledby": "name-heading" },
    el("h2", { id: "name-heading" }, "Refer to"),
    el("div", { class: "uh-field" }, el("label", { for: "name-scheme" }, "What"), sort),
    el("div", { class: "uh-field" }, el("label", { for: "name-words" }, "Words of its name"), words),
    told,
    list,
    el("p", {}, close),
  );
  place.append(dialog);
  /** @type {Name | null} */
  let chosen = null;
  close.addEventListener("click", () => dialog.close());
  /** @type {(nothing?: unknown) => void} */
  let end = () => {};
  // A choice does not wait for the event of closing, which comes after keys that are already pressed.
  const over = new Promise((done) => (end = done));
  dialog.addEventListener("close", end);
  dialog.showModal();
  const names = await asked.catch((error) => {
    told.textContent = `The names are not there yet: ${error.message}.`;
    return /** @type {Name[]} */ ([]);
  });
  const show = () => {
    const found = matching(names, words.value, sort.value);
    const take = (/** @type {Name} */ name) => {
      chosen = name;
      dialog.close();
      end();
    };
    list.replaceChildren(...found.slice(0, SHOWN).map((name) => choice(name, take)));
    if (names.length) told.textContent = found.length === 0 ? "Nothing has these words." : found.length > SHOWN ? `${SHOWN} of ${found.length}: write more of the name.` : "";
  };
  words.addEventListener("input", show);
  sort.addEventListener("change", show);
  show();
  await over;
  dialog.remove();
  return chosen;
}

/**
 * @param {Name} name
 * @param {(name: Name) => void} take
 */
function choice(name, take) {
  return el(
    "li",
    {},
    el("button", { class: "uh-desk__choice", type: "button", onclick: () => take(name) }, name.title),
    el("p", {}, el("code", {}, `<${name.scheme}:${name.id}>`)),
  );
}
