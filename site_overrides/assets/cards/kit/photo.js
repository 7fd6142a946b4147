// A photo of a card: small in its place, large on a tap, or a line that says where it is not.

import { timeWords } from "../app.js";
import { pictureOf } from "../record/store.js";
import { el } from "./dom.js";

/** @import { Photo } from "../types.js" */

/** What stands where another phone took a photo that was not brought along. */
export const NOT_HERE = "The picture is not on this phone.";

/** @param {Photo} photo */
export function photoWords({ mark }) {
  return `Photo by ${mark.who}, ${timeWords(mark.at)}`;
}

/**
 * The picture, in the shape it will have before it is there.
 *
 * @param {Photo} photo
 */
export function photoImage(photo) {
  const { width, height } = photo;
  const image = el("img", { class: "uh-photo", alt: photoWords(photo), width, height });
  const place = el("span", { class: "uh-photo__place" }, image);
  const missing = (/** @type {string} */ words) =>
    place.replaceChildren(el("span", { class: "uh-photo__missing" }, `${photoWords(photo)}. ${words}`));
  pictureOf(photo.id).then(
    (picture) => (picture ? load(image, picture) : missing(NOT_HERE)),
    (error) => missing(`It could not be read. ${error.message}`),
  );
  return place;
}

/**
 * @param {HTMLImageElement} image
 * @param {Blob} picture
 */
function load(image, picture) {
  const address = URL.createObjectURL(picture);
  const release = () => URL.revokeObjectURL(address);
  image.addEventListener("load", release);
  image.addEventListener("error", release);
  image.src = address;
}

/**
 * A small photo that shows itself large when it is pressed.
 *
 * @param {Photo} photo
 * @param {((photo: Photo) => void)|null} takeBack null where it cannot be taken back
 */
export function smallPhoto(photo, takeBack) {
  const press = () => showLarge(photo, takeBack);
  const more = el("span", { class: "uh-unseen" }, "Show it large");
  return el("button", { class: "uh-photo__small", type: "button", onclick: press }, photoImage(photo), more);
}

/**
 * Fills the screen with a photo until it is sent back: by its button, by Escape, or by the phone's own
 * way back. The focus returns to where it was.
 *
 * @param {Photo} photo
 * @param {((photo: Photo) => void)|null} takeBack
 */
function showLarge(photo, takeBack) {
  const close = () => dialog.close();
  const undo = () => {
    close();
    takeBack?.(photo);
  };
  const dialog = el(
    "dialog",
    { class: "uh-photo__large", "aria-label": photoWords(photo), onclose: () => gone() },
    el(
      "div",
      { class: "uh-photo__ways" },
      el("button", { class: "uh-button", type: "button", onclick: close }, "Back"),
      takeBack ? el("button", { class: "uh-button uh-button--plain", type: "button", onclick: undo }, "Take it back") : null,
    ),
    photoImage(photo),
    el("p", {}, photoWords(photo)),
  );
  const gone = () => {
    window.removeEventListener("hashchange", close);
    dialog.remove();
  };
  window.addEventListener("hashchange", close);
  document.body.append(dialog);
  dialog.showModal();
}
