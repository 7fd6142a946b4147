// A reading as it stands: the value with its unit in words, who took it, what was said about it.

import { timeWords } from "../app.js";
import { el } from "../kit/dom.js";
import { readingName, readingRemark, readingWords } from "../kit/reading-words.js";
import { isCalculator } from "../link/to-calculator.js";
import { siteRoot } from "../plan/manual.js";
import { differenceWords } from "./difference.js";
import { readingForm } from "./reading-form.js";

/** @import { Entry } from "./reading-form.js" */
/** @import { Job, ReadingState } from "../types.js" */

/**
 * A reading as it stands, or the form that takes it; as found and as left stand side by side.
 *
 * @param {ReadingState} reading
 * @param {Job} job
 * @param {((entry: Entry) => void)|null} record null where the card is closed
 */
export function readingView(reading, job, record) {
  const found = reading.when === "as left" ? otherOf(reading, job) : null;
  const place = el("div", { class: "uh-card__readings" });
  const beside = found?.taken ? [sideBySide(found, reading)] : [];
  if (record === null) {
    place.append(...beside, takenLine(reading));
    return place;
  }
  const form = readingForm(reading, found, record);
  if (!reading.taken) place.append(...beside, form);
  else {
    const change = () => {
      place.replaceChildren(...beside, form);
      form.querySelector("input")?.focus();
    };
    const plain = { class: "uh-button uh-button--plain", type: "button", onclick: change };
    place.append(...beside, takenLine(reading), el("button", plain, "Change the reading"));
  }
  return place;
}

/**
 * The same reading, taken at the other time, on this or another step of the procedure.
 *
 * @param {ReadingState} reading
 * @param {Job} job
 */
function otherOf({ asked, when }, job) {
  const all = job.steps.flatMap(({ readings }) => readings);
  return all.find((one) => one.asked.id === asked.id && one.when !== when) ?? null;
}

/**
 * @param {ReadingState} found
 * @param {ReadingState} left
 */
function sideBySide(found, left) {
  const words = differenceWords(found.taken, left.taken, left.asked.unit_words);
  const cell = (/** @type {string} */ name, /** @type {ReadingState} */ reading) =>
    el("div", {}, el("dt", {}, name), el("dd", {}, readingWords(reading) || "not taken yet"));
  return el(
    "div",
    { class: "uh-pair" },
    el("dl", {}, cell("As found", found), cell("As left", left)),
    words === "" ? null : el("p", {}, `${words[0].toUpperCase()}${words.slice(1)}.`),
  );
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
    taken?.from ? source(taken.from) : null,
  );
}

/**
 * Says that a calculator worked it out, with the way to it where it is one of this manual.
 *
 * @param {string} from
 */
function source(from) {
  const words = "Worked out by the calculator.";
  const address = URL.canParse(from, location.href) ? new URL(from, location.href).href : "";
  return isCalculator(address, siteRoot()) ? el("a", { href: address }, words) : words;
}
