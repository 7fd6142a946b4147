// Handing a card on to another phone: one file, with the photos or without.

import { cardName, notice } from "../app.js";
import { el } from "../kit/dom.js";
import { fileName, save, share } from "../kit/hand-over.js";
import { counted } from "../record/left.js";
import { LARGEST } from "./card-file.js";
import { cardFile, shareable } from "./deliver.js";
import { fileOf, sizeWords } from "./exchange.js";

/** @import { App, View } from "../app.js" */
/** @import { Session } from "../record/session.js" */
/** @import { CardState } from "../types.js" */

/**
 * @param {App} _app
 * @param {Session} session
 * @param {CardState} card
 * @returns {View}
 */
export function shareView(_app, session, card) {
  const photos = [...session.events.values()].filter(({ kind }) => kind === "photo");
  const withPhotos = el("input", { type: "checkbox", checked: true });
  const ready = el("div");
  const said = el("p", { role: "status" });
  let turn = 0;
  const prepare = async () => {
    const mine = (turn += 1);
    said.textContent = "";
    ready.replaceChildren(el("p", { role: "status" }, "The file is being made."));
    const text = await fileOf(card.id, cardName(card), photos.length > 0 && withPhotos.checked);
    if (mine === turn) ready.replaceChildren(...ways(card, text, said));
  };
  const start = () => void prepare().catch((error) => ready.replaceChildren(notice(error.message)));
  withPhotos.addEventListener("change", start);
  start();
  const choice = el("label", {}, withPhotos, el("span", {}, `With ${counted(photos.length, "photo")}`));
  const node = el(
    "div",
    {},
    el("h2", { tabindex: -1 }, "Share the card"),
    el("p", {}, cardName(card)),
    el(
      "p",
      {},
      "The file holds everything on this card: the vehicle, the complaint, each step and reading, and who did it. ",
      "On the other phone open Job cards, Take in a card file. Both phones can go on working, and share again later.",
    ),
    photos.length > 0 ? el("div", { class: "uh-card__choices" }, choice) : null,
    ready,
    said,
    el("p", {}, el("a", { href: `#card/${card.id}` }, "Back to the card")),
  );
  return { node };
}

/**
 * The buttons; the share sheet wants its file the moment the button is pressed.
 *
 * @param {CardState} card
 * @param {string} text
 * @param {HTMLElement} said
 * @returns {Node[]}
 */
function ways(card, text, said) {
  const bytes = new Blob([text]).size;
  if (bytes > LARGEST) {
    const size = `The file would have ${sizeWords(bytes)}, and a phone takes in ${sizeWords(LARGEST)} at most.`;
    return [notice(`${size} Leave the photos out.`)];
  }
  const name = fileName(`card ${card.started.at.slice(0, 10)} ${card.vehicle.identification}`);
  const file = shareable(name, text);
  const tell = (/** @type {string} */ words) => (said.textContent = words);
  const send = () => {
    void (file && share(file))
      ?.then((gone) => tell(gone ? "Handed to the share sheet." : "Nothing was shared."))
      .catch((error) => tell(`This phone did not share the file: ${error.message} Save it instead.`));
  };
  const keep = () => {
    save(cardFile(name, text));
    tell(`Saved as ${name}.json.`);
  };
  const button = (/** @type {string} */ words, /** @type {() => void} */ onclick, plain = "") =>
    el("button", { class: `uh-button${plain}`, type: "button", onclick }, words);
  return [
    el(
      "p",
      { class: "uh-card__answers" },
      file ? button("Share the file", send) : null,
      button("Save the file", keep, file ? " uh-button--plain" : ""),
    ),
    el("p", { class: "uh-facts" }, `The file has ${sizeWords(bytes)}.`),
  ];
}
