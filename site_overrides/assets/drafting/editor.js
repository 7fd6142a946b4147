// The text itself: a plain field, whose own undo takes back what our buttons do.

import { el } from "../cards/kit/dom.js";

/** Bytes that a page may have; the check refuses more. */
const LARGEST = 1_000_000;

/** Signs from which on the browser's own way of putting text in takes too long; its undo is then lost. */
const LONG = 50_000;

export class Editor {
  /**
   * @param {string} text
   * @param {() => void} typed
   * @param {(words: string) => void} refused told why something was not put in
   */
  constructor(text, typed, refused) {
    this.typed = typed;
    this.field = el("textarea", {
      id: "draft-text",
      class: "uh-desk__text",
      spellcheck: true,
      autocapitalize: "sentences",
      autocomplete: "off",
      wrap: "soft",
      rows: 18,
      oninput: typed,
      onpaste: (/** @type {ClipboardEvent} */ event) => this.pasted(event, refused),
    });
    this.field.value = text;
    this.field.setSelectionRange(0, 0);
  }

  /**
   * A field with far too much in it stands still, so that much is not put in.
   *
   * @private
   * @param {ClipboardEvent} event
   * @param {(words: string) => void} refused
   */
  pasted(event, refused) {
    const text = event.clipboardData?.getData("text/plain") ?? "";
    if (text.length < LONG) return;
    event.preventDefault();
    const { size } = new Blob([text]);
    if (size <= LARGEST) return this.insert(text);
    refused(`Nothing was put in: that text holds ${(size / 1e6).toFixed(1)} MB, and a page holds at most 1 MB.`);
  }

  get text() {
    return this.field.value;
  }

  /** Where the cursor is, what stands on both sides and what is selected. */
  get around() {
    const { selectionStart: start, selectionEnd: end, value } = this.field;
    return { before: value.slice(0, start), selected: value.slice(start, end), after: value.slice(end) };
  }

  /** @param {boolean} isHeld whether nothing can be written */
  hold(isHeld) {
    this.field.readOnly = isHeld;
  }

  /**
   * Replaces a part of the text, in a way that the browser's undo knows of.
   *
   * @param {number} start
   * @param {number} end
   * @param {string} text
   */
  replace(start, end, text) {
    const { scrollTop } = this.field;
    const wanted = this.text.slice(0, start) + text + this.text.slice(end);
    this.field.focus({ preventScroll: true });
    this.field.setSelectionRange(start, end);
    const done = text.length < LONG && (text === "" ? document.execCommand("delete") : document.execCommand("insertText", false, text));
    // Some browsers do not know the command in a text field, or do it by half.
    if (!done || this.text !== wanted) {
      this.field.value = wanted;
      this.field.setSelectionRange(start + text.length, start + text.length);
      this.typed();
    }
    this.field.scrollTop = scrollTop;
  }

  /**
   * Puts something in at the cursor, in place of what is selected.
   *
   * @param {string} text
   */
  insert(text) {
    const { selectionStart, selectionEnd } = this.field;
    this.replace(selectionStart, selectionEnd, text);
  }

  /** @param {string} text the whole of it */
  set(text) {
    if (text === this.text) return;
    this.replace(0, this.text.length, text);
    this.field.setSelectionRange(0, 0);
    this.field.scrollTop = 0;
  }

  /**
   * Selects a part and brings it into sight.
   *
   * @param {[number, number]} span
   */
  select([start, end]) {
    this.field.focus({ preventScroll: true });
    this.field.setSelectionRange(start, end);
    this.field.scrollTop = Math.max(0, this.heightBefore(start) - this.field.clientHeight / 3);
    this.field.scrollIntoView({ block: "nearest" });
  }

  /**
   * How far down a place is: lines wrap, so a copy of the text before it is measured.
   *
   * @private
   * @param {number} offset
   */
  heightBefore(offset) {
    const style = getComputedStyle(this.field);
    const copy = el("div", { "aria-hidden": "true", class: "uh-desk__measure" }, this.text.slice(0, offset));
    copy.style.width = `${this.field.clientWidth}px`;
    copy.style.font = style.font;
    copy.style.padding = style.padding;
    copy.style.tabSize = style.tabSize;
    document.body.append(copy);
    const { height } = copy.getBoundingClientRect();
    copy.remove();
    return height;
  }
}
