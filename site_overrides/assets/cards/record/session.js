// One card while it is open: its events, and what is on the way to the disk but not there yet.

import { draft } from "./events.js";
import { foldCard } from "./fold.js";

/** @import { Happening } from "./events.js" */
/** @import { CardEvent, CardState, Draft, Picture } from "../types.js" */

/**
 * @typedef {object} Io
 * @property {(draft: Draft, seen: number, picture?: Picture) => Promise<CardEvent>} append resolves only when it is on disk
 * @property {(card: string) => Promise<CardEvent[]>} eventsOf
 * @property {(events: CardEvent[], pictures: Map<string, Picture>) => Promise<void>} keep stores events that
 *   exist already, as they are, and pictures of them
 */

/** @typedef {{draft: Draft, key: string, trouble: string, picture?: Picture}} Waiting */

/** Bytes of pictures that an open page holds to put back, the latest ones. */
const HELD = 24_000_000;

export class Session {
  /**
   * @param {string} card
   * @param {Io} io
   * @param {() => void} changed told whenever something is to be shown anew
   */
  constructor(card, io, changed) {
    this.card = card;
    this.io = io;
    this.changed = changed;
    /** @type {Map<string, CardEvent>} */
    this.events = new Map();
    /** @type {Map<string, Waiting>} */
    this.waiting = new Map();
    /** Pictures taken while this page was open. @type {Map<string, Picture>} */
    this.pictures = new Map();
    /** What the browser had cleared under the page; null where it has cleared nothing. */
    this.cleared = /** @type {{back: number, lost: CardEvent[]}|null} */ (null);
    /** @type {CardState|null} */
    this.state = null;
  }

  /**
   * Takes in what is on disk, other windows' events too. Where the browser has cleared its storage
   * under the page, what the page still holds goes back to the disk.
   */
  async load() {
    const held = [...this.events.values()]; // as it is before the look: what is stored meanwhile is there
    const onDisk = new Map((await this.io.eventsOf(this.card)).map((event) => [event.id, event]));
    const missing = held.filter(({ id }) => !onDisk.has(id));
    if (missing.length > 0) await this.putBack(missing);
    for (const [id, event] of onDisk) this.events.set(id, event);
    this.refold();
  }

  /**
   * @private
   * @param {CardEvent[]} missing
   */
  async putBack(missing) {
    const photos = missing.filter(({ kind }) => kind === "photo");
    const held = photos.flatMap(({ id }) => {
      const picture = this.pictures.get(id);
      return picture ? [/** @type {const} */ ([id, picture])] : [];
    });
    await this.io.keep(missing, new Map(held));
    const lost = photos.filter(({ id }) => !this.pictures.has(id));
    this.cleared = { back: missing.length, lost: [...(this.cleared?.lost ?? []), ...lost] };
  }

  /**
   * Holds a picture that is stored, and lets go of the oldest where that is too much.
   *
   * @private
   * @param {string} id
   * @param {Picture|undefined} picture
   */
  hold(id, picture) {
    if (!picture) return;
    this.pictures.set(id, picture);
    let bytes = [...this.pictures.values()].reduce((sum, { content }) => sum + content.byteLength, 0);
    for (const [oldest, { content }] of this.pictures) {
      if (bytes <= HELD) break;
      bytes -= content.byteLength;
      this.pictures.delete(oldest);
    }
  }

  /**
   * Stores what happened to the step of this key. True once it is on disk; where it could not be
   * stored it stays waiting, with the trouble, and can be tried again.
   *
   * @param {string} key
   * @param {Happening} what
   * @param {Picture} [picture] of a photo
   */
  record(key, what, picture) {
    const made = draft({ ...what, card: this.card });
    this.waiting.set(made.id, { draft: made, key, trouble: "", picture });
    this.changed();
    return this.attempt(made.id);
  }

  /** Tries everything again that could not be stored, each with the id it had. */
  async retry() {
    const failed = [...this.waiting.values()].filter(({ trouble }) => trouble !== "");
    for (const one of failed) one.trouble = "";
    this.changed();
    const stored = await Promise.all(failed.map((one) => this.attempt(one.draft.id)));
    return stored.every(Boolean);
  }

  /**
   * What waits for the step of this key.
   *
   * @param {string} key
   */
  waitingFor(key) {
    return [...this.waiting.values()].find((one) => one.key === key) ?? null;
  }

  /** The first trouble of anything that waits, or "". */
  get trouble() {
    return [...this.waiting.values()].find(({ trouble }) => trouble !== "")?.trouble ?? "";
  }

  /** The greatest clock among the card's events: what happens now comes after it. @private */
  get seen() {
    return [...this.events.values()].reduce((most, { clock }) => Math.max(most, clock), 0);
  }

  /**
   * @private
   * @param {string} id
   */
  async attempt(id) {
    const one = this.waiting.get(id);
    if (!one) return true;
    try {
      const event = await this.io.append(one.draft, this.seen, one.picture);
      const cleared = event.sequence === 1 && this.events.size > 0;
      this.events.set(event.id, event);
      this.hold(event.id, one.picture);
      if (cleared) await this.load();
      this.waiting.delete(id);
      this.refold();
      return true;
    } catch (error) {
      one.trouble = error instanceof Error ? error.message : String(error);
      this.changed();
      return false;
    }
  }

  /** @private */
  refold() {
    this.state = foldCard([...this.events.values()]);
    this.changed();
  }
}
