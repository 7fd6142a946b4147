// What the views of the drafting page share.

import { notice } from "../cards/app.js";
import { readJson } from "../phone/site.js";
import { Desk } from "./desk.js";

/** @import { Manual } from "./types.js" */

/** @typedef {{node: HTMLElement, leave?: () => void}} View */

export class App {
  /** @param {HTMLElement} root */
  constructor(root) {
    this.root = root;
    this.warning = "";
    this.desk = new Desk();
    /** @type {View | null} */
    this.view = null;
    /** @type {Promise<Manual> | null} */
    this.texts = null;
  }

  /** The manual's texts, read once. */
  manual() {
    this.texts ??= readJson("drafting/manual.json");
    this.texts.catch(() => (this.texts = null));
    return /** @type {Promise<Manual>} */ (this.texts);
  }

  /** @param {string} hash */
  go(hash) {
    if (location.hash === hash || (hash === "#" && location.hash === "")) window.dispatchEvent(new HashChangeEvent("hashchange"));
    else location.hash = hash;
  }

  /** @param {View} view */
  show(view) {
    this.view?.leave?.();
    this.view = view;
    this.root.replaceChildren(view.node);
  }

  /** What the person should know of this device before writing. */
  warningNode() {
    return this.warning ? notice(this.warning) : null;
  }
}
