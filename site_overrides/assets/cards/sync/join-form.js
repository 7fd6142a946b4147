// Where a person says which server this phone exchanges with, and as whom.

import { el } from "../kit/dom.js";
import { field, readField } from "../kit/field.js";
import { readAddress, wrongAddress, wrongDatabase } from "./address.js";

/** @import { Kept } from "./shop-exchange.js" */
/** @import { Shop } from "./wire.js" */

const NEEDED = "to find the server";

/**
 * @param {Kept|null} kept what is known of it already
 * @param {(shop: Shop, keep: boolean) => void} join
 */
export function joinForm(kept, join) {
  const keep = el("input", { id: "uh-shop-keep", type: "checkbox", "aria-describedby": "uh-shop-keep-help", checked: kept?.password !== undefined });
  const form = el(
    "form",
    { class: "uh-card__form", novalidate: true, autocomplete: "off" },
    field("shop-address", "Address of the server", "It begins with https, such as https://records.example.com:6984.", { needed: NEEDED, refuse: wrongAddress }),
    field("shop-database", "Database", "As the shop has named it, such as cards.", { needed: NEEDED, refuse: wrongDatabase }),
    field("shop-user", "User", "The shop’s name for its phones on the server.", { optional: true }),
    field("shop-password", "Password", "It is sent to this server and to no other place.", { optional: true }),
    el("div", { class: "uh-card__choices" }, el("label", { for: "uh-shop-keep" }, keep, el("span", {}, "Keep the password on this phone"))),
    el(
      "p",
      { class: "uh-field__help", id: "uh-shop-keep-help" },
      "Whoever can open this phone can then get at it. Otherwise it is asked for again whenever the job cards are opened anew.",
    ),
    el("p", { class: "uh-card__answers" }, el("button", { class: "uh-button", type: "submit" }, "Start to exchange")),
  );
  const inputs = { address: inputOf(form, "address"), database: inputOf(form, "database"), user: inputOf(form, "user") };
  for (const [name, input] of Object.entries(inputs)) {
    input.value = kept?.[/** @type {keyof typeof inputs} */ (name)] ?? "";
    for (const habit of ["autocapitalize", "autocorrect"]) input.setAttribute(habit, "off");
    input.spellcheck = false;
  }
  inputs.address.inputMode = "url";
  inputOf(form, "password").type = "password";
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    const shop = entered(form);
    if (shop) join(shop, keep.checked);
  });
  return form;
}

/**
 * What was entered, or null after the first field that will not do has the cursor.
 *
 * @param {HTMLFormElement} form
 * @returns {Shop|null}
 */
function entered(form) {
  const [address, database, user] = ["address", "database", "user"].map((name) => readField(form, `shop-${name}`));
  if (address === null || database === null || user === null) {
    inputOf(form, address === null ? "address" : "database").focus();
    return null;
  }
  const read = readAddress(address);
  if ("wrong" in read) return null;
  return { address: read.address, database, user, password: inputOf(form, "password").value };
}

/**
 * @param {HTMLFormElement} form
 * @param {string} name
 */
function inputOf(form, name) {
  return /** @type {HTMLInputElement} */ (form.querySelector(`#uh-shop-${name}`));
}
