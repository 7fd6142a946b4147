// Where a person says which server this phone exchanges with, and as whom.

import { el } from "../kit/dom.js";
import { field, readField } from "../kit/field.js";
import { readAddress, wrongAddress, wrongDatabase } from "./address.js";

/** @import { Kept } from "./shop-exchange.js" */
/** @import { Shop } from "./wire.js" */

const FIND = "to find the server";
const LET_IN = "so that the server lets this phone in";

const NAMES = /** @type {const} */ (["address", "database", "user", "password"]);

/**
 * @param {Kept|null} kept what is known of it already
 * @param {(shop: Shop, keep: boolean) => void} join
 */
export function joinForm(kept, join) {
  const keep = el("input", {
    id: "uh-shop-keep",
    type: "checkbox",
    "aria-describedby": "uh-shop-keep-help",
    checked: kept?.password !== undefined,
  });
  const form = el("form", { class: "uh-card__form", novalidate: true, autocomplete: "off" }, ...fields(), ...keeping(keep));
  for (const name of NAMES) prepare(inputOf(form, name), name === "password" ? "" : (kept?.[name] ?? ""));
  inputOf(form, "address").inputMode = "url";
  inputOf(form, "password").type = "password";
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    const shop = entered(form);
    if (shop) join(shop, keep.checked);
  });
  return form;
}

function fields() {
  const address = "It begins with https, such as https://records.example.com:6984.";
  return [
    field("shop-address", "Address of the server", address, { needed: FIND, refuse: wrongAddress }),
    field("shop-database", "Database", "As the shop has named it, such as cards.", { needed: FIND, refuse: wrongDatabase }),
    field("shop-user", "User", "The shop’s name for its phones on the server.", { needed: LET_IN }),
    field("shop-password", "Password", "It is sent to this server and to no other place.", { needed: LET_IN }),
  ];
}

/** @param {HTMLInputElement} keep */
function keeping(keep) {
  const label = el("label", { for: "uh-shop-keep" }, keep, el("span", {}, "Keep the password on this phone"));
  return [
    el("div", { class: "uh-card__choices" }, label),
    el(
      "p",
      { class: "uh-field__help", id: "uh-shop-keep-help" },
      "Whoever can open this phone can then get at it. Otherwise it is asked for again whenever the job cards are opened anew.",
    ),
    el(
      "p",
      { class: "uh-card__answers" },
      el("button", { class: "uh-button", type: "submit" }, "Start to exchange"),
    ),
  ];
}

/**
 * @param {HTMLInputElement} input
 * @param {string} value
 */
function prepare(input, value) {
  input.value = value;
  input.spellcheck = false;
  for (const habit of ["autocapitalize", "autocorrect", "autocomplete"]) input.setAttribute(habit, "off");
}

/**
 * What was entered, or null after saying what will not do; the first such field gets the cursor.
 *
 * @param {HTMLFormElement} form
 * @returns {Shop|null}
 */
function entered(form) {
  const entries = NAMES.map((name) => readField(form, `shop-${name}`));
  const wrong = NAMES[entries.indexOf(null)];
  if (wrong) {
    inputOf(form, wrong).focus();
    return null;
  }
  const [address, database, user] = entries.map(String);
  const read = readAddress(address);
  if ("wrong" in read) return null;
  return { address: read.address, database, user, password: inputOf(form, "password").value };
}

/**
 * @param {HTMLFormElement} form
 * @param {typeof NAMES[number]} name
 */
function inputOf(form, name) {
  return /** @type {HTMLInputElement} */ (form.querySelector(`#uh-shop-${name}`));
}
