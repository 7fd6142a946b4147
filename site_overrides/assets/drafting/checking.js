// Has the text checked whenever it rests, one question at a time, the newest text only.

/** @import { Desk } from "./desk.js" */
/** @import { Looked, Shown } from "./types.js" */

/** Time in ms without a keystroke after which the text is checked. */
const REST = 250;

/**
 * @typedef {object} Told
 * @property {(looked: Looked, text: string) => void} looked
 * @property {(shown: Shown) => void} shown
 * @property {(reason: string) => void} failed
 */

export class Checking {
  /**
   * @param {Desk} desk
   * @param {() => {file: string, text: string}} now
   * @param {Told} told
   */
  constructor(desk, now, told) {
    this.desk = desk;
    this.now = now;
    this.told = told;
    /** @type {ReturnType<typeof setTimeout> | undefined} */
    this.timer = undefined;
    this.isAsking = false;
    this.isChanged = false;
    this.isEnded = false;
  }

  /** The text or its file is another. */
  changed() {
    this.isChanged = true;
    clearTimeout(this.timer);
    this.timer = setTimeout(() => void this.check(), REST);
  }

  end() {
    this.isEnded = true;
    clearTimeout(this.timer);
  }

  /** Checks at once, unless that is going on. */
  async check() {
    if (this.isAsking || this.isEnded) return;
    this.isAsking = true;
    this.isChanged = false;
    try {
      const { file, text } = this.now();
      const looked = await this.desk.look(file, text);
      if (!this.isEnded) this.told.looked(looked, text);
      if (!this.isChanged) {
        const shown = await this.desk.page();
        if (!this.isEnded) this.told.shown(shown);
      }
    } catch (error) {
      if (!this.isEnded) this.told.failed(error instanceof Error ? error.message : String(error));
    }
    this.isAsking = false;
    if (this.isChanged) this.changed();
  }
}
