// Takes a reading: a large entry, the unit in words, the limits, and a reason where one is wanted.

import { el } from "../kit/dom.js";
import { isOutside, readNumber } from "../record/numbers.js";

/** @import { ReadingState } from "../types.js" */

/** @typedef {{written: string, reason: string}} Entry */

/** @typedef {ReturnType<typeof makeParts>} Parts */

let count = 0;

/**
 * @param {ReadingState} reading
 * @param {(entry: Entry) => void} record called once the entry will do
 */
export function readingForm(reading, record) {
  const { asked } = reading;
  const parts = makeParts(reading);
  const { input, reason } = parts;
  const submit = (/** @type {Event} */ event) => {
    event.preventDefault();
    const read = readNumber(input.value);
    if ("wrong" in read) return refuse(parts, read.wrong, input);
    const written = input.value.trim().replace(/\s+/g, " ");
    if (!isOutside(read.number, asked)) return record({ written, reason: "" });
    const words = `${written} is outside ${asked.limits_text}. Say why, or what you found.`;
    if (hasReason(parts, words)) record({ written, reason: reason.value.trim() });
  };
  const unreadable = () => {
    input.value = "";
    const words = "Say why it could not be read, then press “Not readable” again.";
    if (hasReason(parts, words)) record({ written: "", reason: reason.value.trim() });
  };
  return el(
    "form",
    { class: "uh-card__reading uh-field", onsubmit: submit, novalidate: true },
    ...parts.nodes,
    el(
      "div",
      { class: "uh-card__answers" },
      el("button", { class: "uh-button", type: "submit" }, "Record"),
      el(
        "button",
        { class: "uh-button uh-button--plain", type: "button", onclick: unreadable },
        "Not readable",
      ),
    ),
  );
}

/** @param {ReadingState} reading */
export function readingName({ asked, when }) {
  return `${asked.name}, ${when}`;
}

/** @param {ReadingState} reading */
function makeParts(reading) {
  const { asked } = reading;
  const id = `uh-reading-${(count += 1)}`;
  const described = { "aria-describedby": `${id}-unit ${id}-help ${id}-error` };
  const pad = { type: "text", inputmode: "decimal", autocomplete: "off" };
  const input = el("input", { id, ...pad, ...described });
  const reason = el("textarea", { id: `${id}-reason`, rows: 2, maxlength: 400 });
  const label = el("label", { for: `${id}-reason` }, "Reason or finding");
  const reasonField = el("div", { class: "uh-field", hidden: true }, label, reason);
  const error = el("p", { class: "uh-field__error", id: `${id}-error`, role: "alert" });
  const unit = el("span", { class: "uh-card__unit", id: `${id}-unit` }, asked.unit_words);
  const limits = asked.limits_text ? `Good: ${asked.limits_text}.` : "No limits are stated.";
  const nodes = [
    el("label", { for: id }, readingName(reading)),
    el("div", { class: "uh-card__entry" }, input, unit),
    ...(asked.unit === "turn" ? [fractions(input)] : []),
    el("p", { class: "uh-field__help", id: `${id}-help` }, limits),
    error,
    reasonField,
  ];
  return { input, reason, reasonField, error, nodes };
}

/**
 * Whether a reason is given; asks for it where it is not.
 *
 * @param {Parts} parts
 * @param {string} words
 */
function hasReason(parts, words) {
  parts.reasonField.hidden = false;
  if (parts.reason.value.trim() !== "") return true;
  refuse(parts, words, parts.reason);
  return false;
}

/**
 * @param {Parts} parts
 * @param {string} words
 * @param {HTMLElement} focus
 */
function refuse({ error, input }, words, focus) {
  error.textContent = words;
  input.setAttribute("aria-invalid", "true");
  focus.focus();
}

/**
 * A number pad has no fractions; turns are counted in them.
 *
 * @param {HTMLInputElement} input
 */
function fractions(input) {
  const put = (/** @type {string} */ part) => () => {
    const whole = /^\d+/.exec(input.value.trim())?.[0] ?? "";
    input.value = `${whole} ${part}`.trim();
  };
  const buttons = ["1/4", "1/2", "3/4"].map((part) =>
    el("button", { type: "button", onclick: put(part), "aria-label": `and ${part} turn` }, part),
  );
  return el("div", { class: "uh-card__fractions" }, ...buttons);
}
