// Puts what is written on disk: soon after each change, at once when the page is left.

import { store } from "./store.js";

/** @import { Draft } from "./types.js" */

/** Longest time in ms that a change waits. */
const SOON = 350;

/** Time in ms until storing is tried again. */
const AGAIN = 3000;

const LEFT = "underhoist-draft-left";

/** @typedef {"stored" | "storing" | "trouble"} State */

export class Saver {
  /**
   * @param {Draft} draft as it is on disk
   * @param {{changed: () => void, elsewhere: (draft: Draft) => void}} told
   */
  constructor(draft, told) {
    this.draft = draft;
    this.told = told;
    /** @type {State} */
    this.state = "stored";
    this.trouble = "";
    this.isHeld = false;
    /** @type {string | null} */
    this.waiting = null;
    this.why = "";
    /** @type {ReturnType<typeof setTimeout> | undefined} */
    this.timer = undefined;
    /** @type {Promise<void>} */
    this.work = Promise.resolve();
  }

  /**
   * Takes in the text as it stands now.
   *
   * @param {string} text
   * @param {string} [why] keeps the text before it among the earlier ones, under this name
   */
  note(text, why = "") {
    if (text === this.draft.text && this.waiting === null) return;
    this.waiting = text;
    this.why ||= why;
    this.show("storing");
    this.timer ??= setTimeout(() => void this.flush(), SOON);
  }

  /** Whether something is not on disk yet. */
  get isBehind() {
    return this.waiting !== null;
  }

  /** Stores what waits. Resolves when it is on disk or cannot be put there. */
  flush() {
    clearTimeout(this.timer);
    this.timer = undefined;
    this.work = this.work.then(() => this.storeWaiting());
    return this.work;
  }

  /**
   * Changes something else than the text.
   *
   * @param {import("./store.js").Change["to"]} to
   */
  async set(to) {
    await this.flush();
    const change = { id: this.draft.id, change: crypto.randomUUID(), count: this.draft.count, to };
    const { draft, isMine } = await store(change);
    this.draft = draft;
    if (!isMine) this.told.elsewhere(draft);
    this.told.changed();
    return isMine;
  }

  /** Stops storing: another window writes on. */
  hold() {
    this.isHeld = true;
    clearTimeout(this.timer);
    this.timer = undefined;
  }

  /** The page is going: what is not on disk is put where it can be put at once. */
  leave() {
    if (!this.isBehind || this.isHeld) return;
    const { id, count } = this.draft;
    try {
      localStorage.setItem(LEFT, JSON.stringify({ id, count, text: this.waiting }));
    } catch {
      // No room there either: the store below is then the only way.
    }
    void this.flush();
  }

  /** @private */
  async storeWaiting() {
    const { waiting: text, why } = this;
    if (text === null || this.isHeld) return;
    this.why = "";
    const { id, count } = this.draft;
    try {
      const { draft, isMine } = await store({ id, change: crypto.randomUUID(), count, to: { text }, why });
      if (!isMine) return this.overtaken(draft);
      this.draft = draft;
      if (this.waiting === text) this.waiting = null;
      else this.timer ??= setTimeout(() => void this.flush(), SOON);
      if (!this.isBehind) dropLeft(id);
      this.show(this.isBehind ? "storing" : "stored");
    } catch (error) {
      this.why ||= why;
      this.show("trouble", error instanceof Error ? error.message : String(error));
      this.timer ??= setTimeout(() => void this.flush(), AGAIN);
    }
  }

  /**
   * Another window has stored since: its text stays, ours is among the earlier ones.
   *
   * @private
   * @param {Draft} draft
   */
  overtaken(draft) {
    this.hold();
    this.waiting = null;
    this.draft = draft;
    this.told.elsewhere(draft);
  }

  /**
   * @private
   * @param {State} state
   * @param {string} [trouble]
   */
  show(state, trouble = "") {
    this.state = state;
    this.trouble = trouble;
    const marks = document.documentElement.dataset;
    if (this.isBehind) marks.draftUnstored = "";
    else delete marks.draftUnstored;
    this.told.changed();
  }
}

/** Stores what an earlier page could not store while it was going. */
export async function storeLeft() {
  const text = localStorage.getItem(LEFT);
  if (!text) return;
  const left = JSON.parse(text);
  await store({ id: left.id, change: crypto.randomUUID(), count: left.count, to: { text: left.text }, why: "" });
  localStorage.removeItem(LEFT);
}

/** @param {string} id */
function dropLeft(id) {
  const text = localStorage.getItem(LEFT);
  if (text && JSON.parse(text).id === id) localStorage.removeItem(LEFT);
}
