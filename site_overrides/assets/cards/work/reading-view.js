// A reading as it stands: the value with its unit in words, who took it, what was said about it.

import { timeWords } from "../app.js";
import { el } from "../kit/dom.js";
import { readingForm, readingName } from "./reading-form.js";

/** @import { Entry } from "./reading-form.js" */
/** @import { ReadingState } from "../types.js" */

/**
 * The reading as it stands, or the form that takes it.
 *
 * @param {ReadingState} reading
 * @param {((entry: Entry) => void)|null} record null where the card is closed
 */
export function readingView(reading, record) {
  const place = el("div", { class: "uh-card__readings" });
  if (record === null) {
    place.append(takenLine(reading));
    return place;
  }
  const form = readingForm(reading, record);
  if (!reading.taken) place.append(form);
  else {
    const change = () => {
      place.replaceChildren(form);
      form.querySelector("input")?.focus();
    };
    const plain = { class: "uh-button uh-button--plain", type: "button", onclick: change };
    place.append(takenLine(reading), el("button", plain, "Change the reading"));
  }
  return place;
}

/**
 * "1 1/2 turns", or that it could not be read.
 *
 * @param {ReadingState} reading
 */
export function readingWords({ asked, taken }) {
  if (!taken) return "";
  if (taken.written === "") return "not readable";
  const one = taken.number === 1 && /^\w+s$/.test(asked.unit_words);
  return `${taken.written} ${one ? asked.unit_words.slice(0, -1) : asked.unit_words}`;
}

/**
 * What is said about a reading outside its limits or without a number, "" otherwise.
 *
 * @param {ReadingState} reading
 */
export function readingRemark({ asked, taken }) {
  if (!taken || taken.reason === "") return "";
  return taken.outside
    ? `Outside ${asked.limits_text}. Reason: ${taken.reason}`
    : `Reason: ${taken.reason}`;
}

/** @param {ReadingState} reading */
function takenLine(reading) {
  const { taken } = reading;
  const signed = taken ? ` ${taken.mark.who}, ${timeWords(taken.mark.at)}. ` : "";
  return el(
    "p",
    { class: "uh-card__said" },
    `${readingName(reading)}: `,
    el("span", { class: "uh-card__value" }, readingWords(reading) || "not taken"),
    signed,
    readingRemark(reading),
  );
}
