// Taking in a card's file: first a look at it, then the person says yes, then all of it is stored.

import { notice } from "../app.js";
import { el } from "../kit/dom.js";
import { counted } from "../record/left.js";
import { lookInto, sizeWords, takeInFile } from "./exchange.js";
import { Refusal } from "./refusal.js";

/** @import { App, View } from "../app.js" */

/**
 * @param {App} app
 * @returns {View}
 */
export function takeInView(app) {
  const told = el("div", { "aria-live": "polite" });
  const input = el("input", {
    id: "uh-card-file",
    type: "file",
    accept: ".json,.txt,application/json,text/plain",
    "aria-describedby": "uh-card-file-help",
  });
  const look = async () => {
    const file = input.files?.[0];
    if (!file) return;
    told.replaceChildren(el("p", {}, "The file is being looked at."));
    const found = await lookInto(file);
    told.replaceChildren(...offer(app, found, told));
  };
  input.addEventListener("click", () => (input.value = "")); // the same file, mended, is chosen anew
  input.addEventListener("change", () => void look().catch((error) => told.replaceChildren(refused(error))));
  const node = el(
    "div",
    {},
    el("h2", { tabindex: -1 }, "Take in a card file"),
    el(
      "div",
      { class: "uh-field" },
      el("label", { for: "uh-card-file" }, "The file from the other phone"),
      input,
      el(
        "p",
        { class: "uh-field__help", id: "uh-card-file-help" },
        "Its name begins with card. It is looked at first; nothing is stored before you say so.",
      ),
    ),
    told,
    el("p", {}, el("a", { href: "#" }, "All cards")),
  );
  return { node };
}

/**
 * @param {App} app
 * @param {Awaited<ReturnType<typeof lookInto>>} found
 * @param {HTMLElement} told
 * @returns {Node[]}
 */
function offer(app, { file, fresh, here, people }, told) {
  const size = [...file.pictures.values()].reduce((sum, { content }) => sum + content.byteLength, 0);
  const photos = size > 0 ? `, and ${counted(file.pictures.size, "photo")} (${sizeWords(size)})` : "";
  const is = here > 0 ? "The card is on this phone already" : "The card is new to this phone";
  const news = fresh > 0 ? `New here: ${counted(fresh, "entry", "entries")}.` : "Nothing of it is new here.";
  const take = el("button", { class: "uh-button", type: "button" }, here > 0 ? "Add it to the card" : "Take it in");
  const store = async () => {
    take.disabled = true;
    told.append(el("p", {}, "Being stored."));
    const taken = await takeInFile(file);
    await app.sessions.get(file.card)?.load();
    told.replaceChildren(...done(file.card, taken));
    /** @type {HTMLElement|null} */ (told.querySelector("a"))?.focus();
  };
  take.addEventListener("click", () => void store().catch((error) => told.replaceChildren(refused(error))));
  return [
    el("h3", {}, file.name),
    el("p", {}, `${is}. The file holds ${counted(file.events.length, "entry", "entries")} by ${listed(people)}${photos}. ${news}`),
    el("p", {}, take),
  ];
}

/**
 * @param {string} card
 * @param {Awaited<ReturnType<typeof takeInFile>>} taken
 * @returns {Node[]}
 */
function done(card, { events, pictures, missing }) {
  const photos = pictures > 0 ? ` and ${counted(pictures, "photo")}` : "";
  const lacks = `${counted(missing, "entry", "entries")} between those of one phone ${missing === 1 ? "is" : "are"} missing.`;
  return [
    el("p", { role: "status" }, `Stored: ${counted(events, "entry", "entries")}${photos}.`),
    missing > 0 ? notice(`${lacks} Ask for the card’s file again from the phone that has them all.`) : "",
    el("p", {}, el("a", { class: "uh-button", href: `#card/${card}` }, "Open the card")),
  ].filter((node) => node instanceof Node);
}

/** @param {unknown} error */
function refused(error) {
  const words = error instanceof Error ? error.message : String(error);
  const start = error instanceof Refusal ? "This file was not taken in." : "The file could not be stored.";
  return notice(`${start} ${words} Nothing was stored.`);
}

/** @param {string[]} names */
function listed(names) {
  return names.length > 1 ? `${names.slice(0, -1).join(", ")} and ${names.at(-1)}` : (names[0] ?? "");
}
