// Writing one draft: the text, what is wrong with it, and the page that will be built.

import { notice, timeWords } from "../cards/app.js";
import { askForm } from "../cards/kit/ask.js";
import { el } from "../cards/kit/dom.js";
import { Checking } from "./checking.js";
import { Editor } from "./editor.js";
import { canShare, fileOf, save, share } from "./file.js";
import { findingsNodes, inOneSentence } from "./findings-view.js";
import { insertBar } from "./insert-bar.js";
import { titleOf } from "./list-view.js";
import { newsNode } from "./manual-news.js";
import { wrongFile } from "./pieces.js";
import { edited, spanOf } from "./places.js";
import { showPage } from "./preview.js";
import { Saver } from "./saver.js";
import { draftOf } from "./store.js";
import { Turn } from "./turn.js";
import { versionsNode } from "./versions-view.js";
import { frame } from "./write-frame.js";

/** @import { App, View } from "./app.js" */
/** @import { Draft, Edit, Finding, Looked, Manual, Version } from "./types.js" */

/** Time in ms of rest after which a screen reader is told what was found. */
const QUIET = 1500;

/**
 * @param {App} app
 * @param {string} id
 * @returns {Promise<View>}
 */
export async function writeView(app, id) {
  app.desk.start(); // Before anything else: Python takes longest.
  const [draft, manual] = await Promise.all([draftOf(id), app.manual()]);
  if (!draft) throw new Error("This draft is not on this device. Look at the list of drafts.");
  return new WriteView(app, draft, manual);
}

class WriteView {
  /**
   * @param {App} app
   * @param {Draft} draft
   * @param {Manual} manual
   */
  constructor(app, draft, manual) {
    this.app = app;
    this.manual = manual;
    this.saver = new Saver(draft, { changed: () => this.showState(), elsewhere: () => this.overtaken() });
    this.editor = new Editor(draft.text, () => this.typed(), (words) => this.ask(el("p", { role: "alert" }, words), this.closing()));
    this.checking = new Checking(app.desk, () => ({ file: this.draft.file, text: this.editor.text }), {
      looked: (looked, text) => this.showFindings(looked, text),
      shown: (shown) => showPage(this.frame.page, shown),
      failed: (reason) => this.showFailure(reason),
    });
    this.turn = new Turn(draft.id, () => this.handOver());
    this.checkedText = "";
    /** @type {ReturnType<typeof setTimeout> | undefined} */
    this.quiet = undefined;
    const bar = insertBar(this.editor, manual.paragraphs, () => app.desk.names());
    this.frame = frame(this.editor.field, bar, this.buttons());
    this.node = this.frame.node;
    this.listenToLeaving();
    this.showState();
    this.showNews();
    this.frame.heading.textContent = titleOf(draft);
    this.frame.file.textContent = draft.file;
    void this.begin();
  }

  get draft() {
    return this.saver.draft;
  }

  /** @private */
  async begin() {
    this.frame.summary.textContent = "Checking. The first time takes a few seconds.";
    void this.checking.check();
    if (!(await this.turn.take())) this.tellOfOther();
  }

  /** Called when another view is shown. */
  leave() {
    this.checking.end();
    clearTimeout(this.quiet);
    this.left?.abort();
    void this.saver.flush().finally(() => this.turn.end());
  }

  /** @private */
  typed() {
    this.saver.note(this.editor.text);
    this.checking.changed();
    this.frame.undo.hidden = true;
  }

  /**
   * Puts another text in the place of this one, which is kept among the earlier ones.
   *
   * @private
   * @param {string} text
   * @param {string} why
   */
  replaceAll(text, why) {
    const before = this.editor.text;
    this.saver.note(text, why);
    this.editor.set(text);
    this.offerUndo("The text was replaced.", before);
  }

  /** @private */
  listenToLeaving() {
    this.left = new AbortController();
    const { signal } = this.left;
    window.addEventListener("pagehide", () => this.saver.leave(), { signal });
    document.addEventListener("visibilitychange", () => void (document.visibilityState === "hidden" && this.saver.leave()), { signal });
    window.addEventListener("beforeunload", (event) => void (this.saver.isBehind && event.preventDefault()), { signal });
  }

  /** @private */
  showState() {
    const { state, trouble, draft } = this.saver;
    const words = state === "stored" ? `Stored on this device ${clock(draft.changed)}` : state === "storing" ? "Storing" : `Not stored yet. ${trouble}`;
    this.frame.state.textContent = words;
    this.frame.state.dataset.state = state;
    if (state === "trouble") this.frame.spoken.textContent = words;
    this.frame.file.textContent = draft.file;
  }

  /** @private */
  showNews() {
    const settle = async (/** @type {boolean} */ takes) => {
      const page = this.manual.pages[this.draft.file];
      if (takes && page !== undefined) this.replaceAll(page, "before the manual’s text was taken");
      await this.saver.set({ basis: page ?? null });
      this.showNews();
    };
    const acts = { keep: () => void settle(false), take: () => void settle(true) };
    const news = newsNode(this.draft, this.manual.pages[this.draft.file], this.app.desk, acts);
    this.frame.news.replaceChildren(...(news ? [news] : []));
  }

  /**
   * @private
   * @param {Looked} looked
   * @param {string} text
   */
  showFindings(looked, text) {
    this.checkedText = text;
    const sentence = inOneSentence(looked);
    this.frame.summary.textContent = sentence;
    this.frame.count.textContent = String(looked.own.length + looked.elsewhere.length);
    const acts = { go: (/** @type {Finding} */ finding) => this.go(finding), mend: (/** @type {Finding} */ finding) => this.mend(finding) };
    this.frame.found.replaceChildren(...findingsNodes(looked, acts));
    this.frame.node.dataset.checked = "";
    clearTimeout(this.quiet);
    this.quiet = setTimeout(() => (this.frame.spoken.textContent = sentence), QUIET);
    this.frame.heading.textContent = titleOf({ ...this.draft, text });
  }

  /**
   * @private
   * @param {string} reason
   */
  showFailure(reason) {
    const words = `Not checked: ${reason}. The draft is stored all the same.`;
    this.frame.summary.textContent = words;
    this.frame.spoken.textContent = words;
    this.frame.found.replaceChildren();
    this.frame.count.textContent = "?";
  }

  /**
   * @private
   * @param {Finding} finding
   */
  go(finding) {
    this.editor.select(spanOf(this.editor.text, finding));
  }

  /**
   * @private
   * @param {Finding} finding
   */
  mend({ edit, line }) {
    if (!edit || this.editor.text !== this.checkedText) return void this.checking.check();
    const before = this.editor.text;
    const { start, end, text } = edited(before, /** @type {Edit} */ (edit));
    this.saver.note(text, "before a finding was mended");
    this.editor.replace(start, end, edit.text);
    this.offerUndo(`Line ${line} is mended.`, before);
  }

  /**
   * @private
   * @param {string} words
   * @param {string} before
   */
  offerUndo(words, before) {
    const after = this.editor.text;
    const undo = el("button", { class: "uh-button uh-button--plain", type: "button" }, "Undo");
    undo.addEventListener("click", () => {
      if (this.editor.text === after) this.editor.set(before);
      this.frame.undo.hidden = true;
    });
    this.frame.undo.replaceChildren(el("p", {}, words), undo);
    this.frame.undo.hidden = false;
  }

  /** @private */
  buttons() {
    const plain = "uh-button uh-button--plain";
    const file = () => fileOf(this.draft.file, this.editor.text);
    const sharing = el("button", { class: "uh-button", type: "button", onclick: () => void this.share() }, "Share the file");
    return [
      canShare(file()) ? sharing : null,
      el("button", { class: canShare(file()) ? plain : "uh-button", type: "button", onclick: () => save(file()) }, "Save the file"),
      el("button", { class: plain, type: "button", onclick: () => void this.showVersions() }, "Earlier texts"),
      el("button", { class: plain, type: "button", onclick: () => this.rename() }, "Rename"),
      el("button", { class: plain, type: "button", onclick: () => this.remove() }, "Delete"),
    ];
  }

  /** @private */
  async share() {
    try {
      await share(fileOf(this.draft.file, this.editor.text));
    } catch (error) {
      this.ask(el("p", {}, `It was not handed on (${error instanceof Error ? error.message : error}). Save the file instead.`));
    }
  }

  /** @private */
  async showVersions() {
    await this.saver.flush();
    const takeBack = (/** @type {Version} */ { text, at }) => {
      this.replaceAll(text, `before the text of ${timeWords(at)} was taken back`);
      this.ask();
    };
    const versions = await versionsNode(this.draft.id, takeBack);
    this.ask(el("h3", { tabindex: -1 }, "Earlier texts"), versions, this.closing());
  }

  /** @private */
  rename() {
    const answer = async (/** @type {string} */ file) => {
      await this.saver.set({ file, basis: this.manual.pages[file] === undefined ? null : this.draft.basis });
      this.ask();
      this.showNews();
      this.checking.changed();
    };
    const question = { label: "New name of the file", help: `It is ${this.draft.file} now.`, go: "Rename", refuse: wrongFile };
    this.ask(askForm(question, { answer: (file) => void answer(file), away: () => this.ask() }));
  }

  /** @private */
  remove() {
    const act = async () => {
      if (await this.saver.set({ removed: new Date().toISOString() })) this.app.go("#");
    };
    this.ask(
      el("p", {}, "Delete this draft? It can be brought back from the list of drafts."),
      el("button", { class: "uh-button", type: "button", onclick: () => void act() }, "Delete the draft"),
      el("button", { class: "uh-button uh-button--plain", type: "button", onclick: () => this.ask() }, "Keep it"),
    );
  }

  /** @private */
  closing() {
    return el("button", { class: "uh-button uh-button--plain", type: "button", onclick: () => this.ask() }, "Close");
  }

  /**
   * Asks or shows something below the buttons; nothing closes it.
   *
   * @private
   * @param {...Node} nodes
   */
  ask(...nodes) {
    this.frame.asked.replaceChildren(...nodes);
    const first = this.frame.asked.querySelector("h3, textarea, button");
    if (first instanceof HTMLElement) first.focus();
    this.frame.asked.scrollIntoView({ block: "nearest" });
  }

  /** @private */
  tellOfOther() {
    this.saver.hold();
    this.editor.hold(true);
    const here = el("button", { class: "uh-button", type: "button" }, "Write here instead");
    here.addEventListener("click", () => void this.takeOver());
    this.frame.other.replaceChildren(notice("This draft is open in another window, which stores it. Here it can only be read.", here));
  }

  /** @private */
  async takeOver() {
    await this.turn.demand();
    this.turn.end();
    this.app.go(location.hash); // with the text that the other window stored last
  }

  /** Another window asked for the draft: what waits is stored first. @private */
  async handOver() {
    await this.saver.flush();
    this.tellOfOther();
  }

  /** Another window stored in between: this text is among the earlier ones. @private */
  overtaken() {
    this.editor.hold(true);
    const again = el("button", { class: "uh-button", type: "button", onclick: () => this.app.go(location.hash) }, "Show the other text");
    const words = "Another window changed this draft meanwhile. Nothing is lost: your last text is kept under “Earlier texts”.";
    this.frame.other.replaceChildren(notice(words, again));
  }
}

/** @param {string} at */
const clock = (at) => new Date(at).toLocaleTimeString("en-GB", { hour: "2-digit", minute: "2-digit" });
