// Takes a reading: a large entry with a pad, the unit in words, the limits, and a finding or a reason
// where one is wanted.

import { el } from "../kit/dom.js";
import { URGENCY_WORDS } from "../kit/finding-words.js";
import { radios } from "../kit/radios.js";
import { readingName } from "../kit/reading-words.js";
import { isOutside, readNumber } from "../record/numbers.js";
import { differenceWords } from "./difference.js";
import { numberPad } from "./number-pad.js";

/** @import { ReadingState } from "../types.js" */

/** An urgency makes the reason a finding too.
 * @typedef {{written: string, reason: string, urgency: string}} Entry */

/** @typedef {ReturnType<typeof makeParts>} Parts */

let count = 0;

/**
 * @param {ReadingState} reading
 * @param {ReadingState|null} found the same as it was found, where this is as left
 * @param {(entry: Entry) => void} record called once the entry will do
 */
export function readingForm(reading, found, record) {
  const { asked } = reading;
  const parts = makeParts(reading, found);
  const { input } = parts;
  const give = (/** @type {string} */ written, /** @type {string} */ wanted, finding = false) => {
    if (wanted === "") return record({ written, reason: "", urgency: "" });
    const entry = reasonFor(parts, wanted, finding);
    if (entry) record({ written, ...entry });
  };
  const submit = (/** @type {Event} */ event) => {
    event.preventDefault();
    const read = readNumber(input.value);
    if ("wrong" in read) return refuse(parts, read.wrong, input);
    const written = input.value.trim().replace(/\s+/g, " ");
    const outside = isOutside(read.number, asked);
    give(written, outside ? `${written} is outside ${asked.limits_text}. Say why, or what you found.` : "", outside);
  };
  const unreadable = () => {
    input.value = "";
    give("", "Say why it could not be read, then press “Not readable” again.");
  };
  const plain = { class: "uh-button uh-button--plain", type: "button" };
  return el(
    "form",
    { class: "uh-card__reading uh-field", onsubmit: submit, novalidate: true, autocomplete: "off" },
    ...parts.nodes,
    el(
      "div",
      { class: "uh-card__answers" },
      el("button", { class: "uh-button", type: "submit" }, "Record"),
      el("button", { ...plain, onclick: unreadable }, "Not readable"),
    ),
  );
}

/**
 * @param {ReadingState} reading
 * @param {ReadingState|null} found
 */
function makeParts(reading, found) {
  const { asked } = reading;
  const id = `uh-reading-${(count += 1)}`;
  const described = { "aria-describedby": `${id}-unit ${id}-help ${id}-error` };
  const input = el("input", { id, type: "text", autocomplete: "off", maxlength: 40, ...described });
  const { pad, remove } = numberPad(input, asked);
  const error = el("p", { class: "uh-field__error", id: `${id}-error`, role: "alert" });
  const unit = el("span", { class: "uh-card__unit", id: `${id}-unit` }, asked.unit_words);
  const limits = asked.limits_text ? `Good: ${asked.limits_text}.` : "No limits are stated.";
  const { reason, reasonField, finding } = reasonParts(id);
  const nodes = [
    el("label", { for: id }, readingName(reading)),
    el("div", { class: "uh-card__entry" }, input, remove, unit),
    el("p", { class: "uh-field__help", id: `${id}-help` }, limits),
    ...(found ? [difference(input, reading, found)] : []),
    pad,
    error,
    reasonField,
  ];
  return { input, pad, reason, reasonField, finding, error, nodes };
}

/**
 * Says while it is typed how the entry stands against what was found.
 *
 * @param {HTMLInputElement} input
 * @param {ReadingState} reading
 * @param {ReadingState} found
 */
function difference(input, { asked }, found) {
  const line = el("p", { class: "uh-card__difference", role: "status" });
  input.addEventListener("input", () => {
    const read = readNumber(input.value);
    const left = "number" in read ? { written: input.value, number: read.number } : null;
    const words = differenceWords(found.taken, left, asked.unit_words);
    line.textContent = words === "" ? "" : `As left: ${words}.`;
  });
  return line;
}

/**
 * The reason, and the button that makes a finding of it.
 *
 * @param {string} id
 */
function reasonParts(id) {
  const reason = el("textarea", { id: `${id}-reason`, rows: 2, maxlength: 400 });
  const urgency = radios("How soon does it want seeing to?", URGENCY_WORDS);
  const show = () => {
    const open = !urgency.node.isConnected;
    button.setAttribute("aria-expanded", String(open));
    if (open) button.after(urgency.node);
    else urgency.node.remove();
  };
  const plain = { class: "uh-button uh-button--plain", type: "button", "aria-expanded": "false" };
  const button = el("button", { ...plain, onclick: show }, "Make it a finding");
  const label = el("label", { for: `${id}-reason` }, "Reason or finding");
  const reasonField = el("div", { class: "uh-field", hidden: true }, label, reason, button);
  return { reason, reasonField, finding: { button, urgency } };
}

/**
 * What was said about the entry, or null after asking for what is missing.
 *
 * @param {Parts} parts
 * @param {string} words
 * @param {boolean} mayFind whether it can be made a finding
 */
function reasonFor(parts, words, mayFind) {
  const { reason, reasonField, finding, pad } = parts;
  pad.hidden = true; // the reason is written with the phone's own keyboard
  reasonField.hidden = false;
  finding.button.hidden = !mayFind;
  const isFinding = mayFind && finding.urgency.node.isConnected;
  if (!isFinding) finding.urgency.node.remove();
  const said = reason.value.trim();
  if (said === "") return void refuse(parts, words, reason);
  const urgency = isFinding ? finding.urgency.need("Choose how soon it wants seeing to.") : "";
  return urgency === null ? null : { reason: said, urgency };
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
