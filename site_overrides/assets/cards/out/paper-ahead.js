// A card's sheet, drawn ahead where it holds photos: a browser prints at once and waits for no picture.

import { el } from "../kit/dom.js";
import { sheet } from "./sheet-view.js";

/** @import { CardState } from "../types.js" */

const PAUSE = 1_000; // ms without a change before the pictures are read again

export class PaperAhead {
  /** @type {{card: CardState, node: HTMLElement} | undefined} */
  #drawn;
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  #pause;

  /** @param {CardState} card as it stands now */
  take(card) {
    if (card === this.#drawn?.card) return;
    clearTimeout(this.#pause);
    const draw = () => (this.#drawn = { card, node: onPaper(card) });
    if (hasPhotos(card)) this.#pause = setTimeout(draw, PAUSE);
  }

  /**
   * The sheet of a card as it stands.
   * @param {CardState} card
   */
  of(card) {
    return this.#drawn?.card === card ? this.#drawn.node : onPaper(card);
  }

  leave() {
    clearTimeout(this.#pause);
  }
}

/** @param {CardState} card */
const onPaper = (card) => el("div", { class: "uh-card--paper" }, sheet(card));

/** @param {CardState} card */
function hasPhotos({ jobs, findings }) {
  const inSteps = jobs.some(({ steps, past }) => [...steps, ...past].some(({ photos }) => photos.length > 0));
  return inSteps || findings.some(({ photos }) => photos.length > 0);
}
