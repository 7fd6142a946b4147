// The exchange with the shop's server while the cards are open. Off until a person enters an address.
//
// It works beside the cards and never in their way: it has no part in storing an entry, and a trouble of
// its own ends nothing but itself.

import { announce, remember, remembered } from "../record/store.js";
import { notes, told } from "./notes.js";
import { REST, SOON, pauseAfter } from "./pace.js";
import { missing, records } from "./records.js";
import { ExchangeTrouble } from "./trouble.js";
import { waiting } from "./waiting.js";

/** @import { State } from "./state-words.js" */
/** @import { Shop } from "./wire.js" */

/** What is kept on the phone; the password only where the person has said so.
 * @typedef {Omit<Shop, "password"> & {password?: string}} Kept */

const OFF = { joined: false, locked: false, busy: false, last: "", waiting: 0, missing: 0, trouble: "", passes: false };

class ShopExchange {
  /** @type {State} */
  state = { ...OFF };
  /** @type {Kept|null} */
  kept = null;
  /** Told whenever the state has changed. @type {Set<() => void>} */
  watchers = new Set();
  /** Told of cards that have grown. @type {(card: string) => void} */
  grown = () => {};
  #password = /** @type {string|null} */ (null); // in memory, for as long as this page lives
  #timer = /** @type {ReturnType<typeof setTimeout>|undefined} */ (undefined);
  #stop = new AbortController();
  #failures = 0;
  #running = /** @type {Promise<void>} */ (Promise.resolve());
  /** @type {Set<string>} */
  #stuck = new Set();

  /**
   * Goes on where the person has joined before, and listens to what happens on the phone.
   *
   * @param {(card: string) => void} grown
   */
  async begin(grown) {
    this.grown = grown;
    const news = "BroadcastChannel" in globalThis ? new BroadcastChannel("underhoist-cards") : null;
    news?.addEventListener("message", () => void this.#happened());
    window.addEventListener("online", () => this.#soonAgain());
    document.addEventListener("visibilitychange", () => this.#soonAgain());
    this.kept = /** @type {Kept|null} */ ((await remembered("shop")) ?? null);
    if (!this.kept) return;
    this.#password = this.kept.password ?? null;
    const last = String((await remembered("shop last")) ?? "");
    this.#say({ joined: true, locked: this.#password === null, last });
    await this.#count();
    this.#in(SOON);
  }

  /**
   * Joins a server and exchanges at once. Another server than before starts with a clean note.
   *
   * @param {Shop} shop
   * @param {boolean} keep whether the password may stay on this phone
   */
  async join({ password, ...place }, keep) {
    await this.#halt();
    const same = this.kept?.address === place.address && this.kept.database === place.database;
    if (!same) await notes.startOver();
    this.kept = keep ? { ...place, password } : place;
    await remember("shop", this.kept);
    if (!same) await remember("shop last", "");
    this.#password = password;
    this.#say({ ...(same ? this.state : OFF), joined: true, locked: false, busy: false, trouble: "" });
    await this.now();
  }

  /** Stops for good: the address, the password and the notes go, every entry stays. */
  async leave() {
    this.kept = null;
    this.#password = null;
    await this.#halt();
    await remember("shop", null);
    await remember("shop last", "");
    await notes.startOver();
    this.#say(OFF);
  }

  /** Exchanges now, whatever the pace was, and tries again what the server has refused before. */
  now() {
    this.#stuck.clear();
    return this.#turn();
  }

  /** Lets an exchange that is under way end before its next step. */
  async #halt() {
    clearTimeout(this.#timer);
    this.#stop.abort();
    await this.#running;
    this.#stop = new AbortController();
  }

  /** @returns {Promise<void>} */
  #turn() {
    clearTimeout(this.#timer);
    if (!this.state.busy) this.#running = this.#takeTurn();
    return this.#running;
  }

  async #takeTurn() {
    if (!this.kept || this.#password === null) return;
    const shop = { ...this.kept, password: this.#password };
    this.#say({ busy: true });
    const trouble = await this.#attempt(shop);
    if (this.#stop.signal.aborted) return; // the person has left, or joined another server
    if (trouble === null) await this.#succeeded();
    else this.#failed(trouble);
    await this.#count();
  }

  /** What a person should know of single entries. */
  told() {
    return this.kept ? told() : Promise.resolve([]);
  }

  /**
   * One exchange, in one window at a time.
   *
   * @param {Shop} shop
   * @returns {Promise<Error|null|"elsewhere">}
   */
  async #attempt(shop) {
    const progress = (/** @type {string[]} */ cards) => {
      for (const card of cards) {
        announce(card);
        this.grown(card);
      }
    };
    const run = async () => {
      const { exchange } = await import("./exchange.js"); // a phone without a shop never needs it
      await exchange({ shop, records, notes, signal: this.#stop.signal, stuck: this.#stuck, progress });
      return null;
    };
    try {
      if (!navigator.locks) return await run();
      const mine = { ifAvailable: true };
      return await navigator.locks.request("underhoist-shop", mine, (lock) => (lock ? run() : "elsewhere"));
    } catch (error) {
      return error instanceof Error ? error : new Error(String(error));
    }
  }

  async #succeeded() {
    this.#failures = 0;
    const last = new Date().toISOString();
    await remember("shop last", last).catch(() => {});
    this.#say({ busy: false, trouble: "", last });
    this.#in(REST);
  }

  /** @param {Error|"elsewhere"} trouble */
  #failed(trouble) {
    if (trouble === "elsewhere") {
      this.#say({ busy: false });
      this.#in(REST);
      return;
    }
    this.#failures += 1;
    const known = trouble instanceof ExchangeTrouble;
    const pause = pauseAfter(this.#failures, known ? trouble : { passes: true, wait: 0 }, Math.random());
    this.#say({ busy: false, trouble: trouble.message, passes: pause !== null });
    if (pause !== null) this.#in(pause);
  }

  /** Something was stored on this phone. */
  async #happened() {
    if (!this.kept) return;
    await this.#count();
    if (this.state.trouble === "" && this.state.waiting > 0) this.#in(SOON);
  }

  /** The network is back, or the person looks at the phone again. */
  #soonAgain() {
    const stuck = this.state.trouble !== "" && !this.state.passes;
    if (document.visibilityState === "visible" && this.kept && !stuck) this.#in(SOON);
  }

  async #count() {
    try {
      const { events, photos } = await waiting({ records, notes });
      if (this.kept) this.#say({ waiting: events.length + photos.length, missing: await missing() });
    } catch {
      // The numbers stay as they were: whoever stores an entry is told of the phone's trouble.
    }
  }

  /** @param {number} pause ms */
  #in(pause) {
    clearTimeout(this.#timer);
    if (document.visibilityState === "visible") this.#timer = setTimeout(() => void this.#turn(), pause);
  }

  /** @param {Partial<State>} news */
  #say(news) {
    this.state = { ...this.state, ...news };
    for (const watcher of this.watchers) watcher();
  }
}

/** The one exchange of this page. */
export const shopExchange = new ShopExchange();
