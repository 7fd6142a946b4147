// What every view of the cards shares: who is at work, the open sessions, how to go elsewhere.

import { el } from "./kit/dom.js";
import { Session } from "./record/session.js";
import { keep } from "./record/merge.js";
import { append, eventsOf, onNews, remember } from "./record/store.js";

/** @import { StorageWarning } from "./record/preflight.js" */
/** @import { CardEvent, CardState, Picture } from "./types.js" */

/** Its title is what the window, and the foot of a printed page, are called while it is shown.
 * @typedef {{node: HTMLElement, update?: () => void, leave?: () => void, awake?: boolean, title?: string}} View */

export class App {
  /**
   * @param {HTMLElement} root
   * @param {(session: Session) => void} onChange told of every change of a card that was opened
   */
  constructor(root, onChange) {
    this.root = root;
    this.onChange = onChange;
    this.title = document.title;
    this.initials = "";
    /** What the storage promises, once it was asked. @type {Promise<StorageWarning>|undefined} */
    this.word = undefined;
    /** What is being read while the storage is looked at, by what it is. @type {Map<string, Promise<any>>} */
    this.ahead = new Map();
    /** @type {View|null} */
    this.view = null;
    /** @type {Map<string, Session>} */
    this.sessions = new Map();
    onNews((card) => void this.sessions.get(card)?.load().catch(() => {}));
    document.addEventListener("visibilitychange", () => this.wake());
    window.addEventListener("beforeunload", (event) => {
      if (this.unstored) event.preventDefault();
    });
  }

  /** Whether anything is not on disk yet. */
  get unstored() {
    return [...this.sessions.values()].some(({ waiting }) => waiting.size > 0);
  }

  /**
   * Begins to read what the first view will ask for.
   *
   * @param {string} what
   * @param {() => Promise<unknown>} read
   */
  readAhead(what, read) {
    const begun = read();
    begun.catch(() => {}); // said where it is asked for
    this.ahead.set(what, begun);
  }

  /**
   * @template T
   * @param {string} what
   * @param {() => Promise<T>} read
   * @returns {Promise<T>} what was read ahead, the first time; later it is read anew
   */
  readOnce(what, read) {
    const begun = this.ahead.get(what);
    this.ahead.clear();
    return begun ?? read();
  }

  /**
   * The session of a card, with what is on disk. It stays, with what waits, while the page lives.
   *
   * @param {string} card
   */
  async session(card) {
    const known = this.sessions.get(card);
    const io = { append, eventsOf, keep: this.putBack };
    /** @type {Session} */
    const session = known ?? new Session(card, io, () => this.changed(session));
    this.sessions.set(card, session);
    await session.load();
    return session;
  }

  /** @param {string} hash */
  go(hash) {
    if (location.hash === hash) window.dispatchEvent(new HashChangeEvent("hashchange"));
    else location.hash = hash;
  }

  /** @param {View} view */
  show(view) {
    this.view?.leave?.();
    this.view = view;
    document.title = [view.title, this.title].filter(Boolean).join(" - ");
    this.root.replaceChildren(view.node);
    this.update();
  }

  /** Shows again what has changed, and tells the rest of the page how it stands. */
  update() {
    const marks = document.documentElement.dataset;
    if (this.view?.awake) marks.card = "open";
    else delete marks.card;
    if (this.unstored) marks.cardUnstored = "";
    else delete marks.cardUnstored;
    this.view?.update?.();
  }

  /**
   * @private
   * @param {Session} session
   */
  changed(session) {
    this.update();
    this.onChange(session);
  }

  /** @param {string} initials */
  async keepInitials(initials) {
    this.initials = initials.trim().toUpperCase();
    await remember("initials", this.initials);
  }

  /**
   * The browser has cleared its storage: what this page still knows goes back.
   *
   * @private
   * @param {CardEvent[]} events
   * @param {Map<string, Picture>} pictures
   */
  putBack = async (events, pictures) => {
    await keep(events, pictures);
    await remember("initials", this.initials);
  };

  /** @private */
  wake() {
    if (document.visibilityState !== "visible") return;
    for (const session of this.sessions.values()) void session.load().catch(() => {});
  }
}

/**
 * What a card is called: the vehicle as the shop knows it, and its unit.
 *
 * @param {CardState} card
 */
export function cardName({ vehicle }) {
  return `${vehicle.identification} · ${vehicle.family_title}`;
}

/** Made once: it takes a hundred times as long as using it. @type {Intl.DateTimeFormat|undefined} */
let asWritten;

/**
 * Date and time as people here write them.
 *
 * @param {string} at
 */
export function timeWords(at) {
  const time = new Date(at);
  if (Number.isNaN(time.valueOf())) return "at an unknown time";
  asWritten ??= new Intl.DateTimeFormat("en-GB", { dateStyle: "medium", timeStyle: "short" });
  return asWritten.format(time);
}

/**
 * A notice that asks for attention.
 *
 * @param {string} words
 * @param {...Node} more
 */
export function notice(words, ...more) {
  return el("div", { class: "uh-notice", role: "alert" }, el("p", {}, words), ...more);
}

/**
 * What is told while something could not be stored, with a button that tries again; nothing otherwise.
 *
 * @param {Session} session
 * @returns {HTMLElement[]}
 */
export function notStored(session) {
  if (!session.trouble) return [];
  const press = { class: "uh-button", type: "button", onclick: () => void session.retry() };
  return [notice(`Not stored yet. ${session.trouble}`, el("button", press, "Try again"))];
}
