/** Shows where the search stands, with what the reader can do: give a result, undo one, stop. */
import { el } from "../cards/kit/dom.js";
import { redraw } from "../phone/redraw.js";
import { doneList, how, mends, resultButtons } from "./standing-parts.js";

/** @import { FamilyData, Given, Result, Told } from "./types.js" */

/**
 * What happens on a tap. Without `none` and `goOn` there is no way to say "None of these".
 *
 * @typedef {object} Acts
 * @property {(check: string, result: Result) => void} result
 * @property {(check: string) => void} undo
 * @property {() => void} [none]
 * @property {() => void} [goOn]
 */

/**
 * @typedef {object} Setting
 * @property {FamilyData} family
 * @property {(url: string) => string | null} href an address of the site as a link from this page; null if it leads nowhere
 * @property {Acts} act
 */

/** What the reader is to do next. */
const LEAD = ":is(.uh-next, .uh-standing__found, .uh-ask):not([hidden])";

/** One complaint's view; `node`, `status` and `drawn` stay the same, what is in them is drawn anew. */
export class StandingView {
  /**
   * @param {Setting} setting
   * @param {Element} [node] what the page shows already, taken over
   */
  constructor(setting, node = empty()) {
    this.setting = setting;
    this.node = node;
    const part = (/** @type {string} */ name) => /** @type {HTMLElement} */ (node.querySelector(`.uh-standing__${name}`));
    this.status = part("outlook");
    this.drawn = part("drawn");
    /** Whether the page's own answer stands there: the first live one is mostly the same. */
    this.isAsBuilt = this.drawn.childElementCount > 0;
  }

  /**
   * @param {Told} told
   * @param {Given[]} results
   * @param {{isStopped?: boolean}} [how]
   */
  show(told, results, { isStopped = false } = {}) {
    const parsed = new DOMParser().parseFromString(told.html, "text/html"); // escaped by Python
    const fresh = /** @type {Element} */ (parsed.querySelector(".uh-standing__drawn"));
    if (isStopped) stop(fresh);
    this.#fill(fresh);
    const done = doneList(results, this.setting);
    const lead = fresh.querySelector(LEAD);
    if (done && lead) lead.after(done);
    else if (done) fresh.prepend(done);
    const { none, goOn } = this.setting.act;
    if (none && goOn && told.ok && !told.ask) fresh.append(this.#noneButton(isStopped));
    if (this.isAsBuilt) redrawKeepingOpen(this.drawn, fresh);
    else this.drawn.replaceChildren(...fresh.childNodes);
    this.isAsBuilt = false;
    this.status.style.minHeight = "";
    this.say(isStopped ? "Stopped: none of these." : told.outlook || told.wrong);
  }

  /**
   * Says how things stand, or what is going on; read out where it changed.
   *
   * @param {string} words
   */
  say(words) {
    if (this.status.textContent !== words) this.status.textContent = words;
  }

  /**
   * Says that an answer is being worked out, in the room that the last words had.
   *
   * @param {string} words
   */
  wait(words) {
    this.status.style.minHeight ||= `${this.status.offsetHeight}px`;
    this.say(words);
  }

  /**
   * @param {string} reason
   * @param {() => void} again
   * @param {string} [instead] what the reader can go by meanwhile
   */
  failed(reason, again, instead = "") {
    this.status.style.minHeight = "";
    this.say(`The next check cannot be worked out: ${reason}. Your results are kept. ${instead}`);
    this.status.append(el("button", { type: "button", class: "uh-button", onclick: again }, "Try again"));
  }

  /** Takes the reader to what comes next. */
  focusNext() {
    const heading = /** @type {HTMLElement|null} */ (this.drawn.querySelector(`${LEAD} > h3`));
    heading?.focus({ preventScroll: true });
    const box = this.node.getBoundingClientRect();
    if (box.top < 0 || box.top > innerHeight / 2) this.node.scrollIntoView();
  }

  /** @param {Element} fresh */
  #fill(fresh) {
    const { family } = this.setting;
    for (const place of fresh.querySelectorAll("[data-how]")) {
      place.replaceChildren(...how(place.getAttribute("data-how") ?? "", this.setting));
    }
    for (const place of fresh.querySelectorAll("[data-mends]")) {
      const ways = family.causes[place.getAttribute("data-mends") ?? ""]?.procedures ?? [];
      place.replaceChildren(...mends(ways, this.setting));
    }
    for (const place of fresh.querySelectorAll("[data-results]")) {
      place.replaceChildren(...resultButtons(place.getAttribute("data-results") ?? "", this.setting.act));
    }
  }

  /** @param {boolean} isStopped */
  #noneButton(isStopped) {
    const { none, goOn } = this.setting.act;
    const words = isStopped ? "Go on with the checks" : "None of these";
    const onclick = () => (isStopped ? goOn : none)?.();
    const button = el("button", { type: "button", class: "uh-button uh-button--plain", onclick }, words);
    return el("p", { class: "uh-none" }, isStopped ? null : "Nothing of the list fits? ", button);
  }
}

const empty = () =>
  el("div", { class: "uh-standing" }, el("p", { class: "uh-standing__outlook", role: "status" }), el("div", { class: "uh-standing__drawn" }));

/**
 * A check that the reader has opened meanwhile stays open.
 *
 * @param {Element} place
 * @param {Element} fresh
 */
function redrawKeepingOpen(place, fresh) {
  const opened = new Set([...place.querySelectorAll("details[open] summary")].map(({ textContent }) => textContent));
  for (const each of fresh.querySelectorAll("details")) each.open = opened.has(each.querySelector("summary")?.textContent ?? "");
  redraw(place, fresh);
}

/**
 * The reader says that nothing of the list fits: no check is proposed, and what to do is shown.
 *
 * @param {Element} fresh
 */
function stop(fresh) {
  for (const part of fresh.querySelectorAll(".uh-next, .uh-others, .uh-standing__found")) part.remove();
  fresh.querySelector(".uh-ask")?.removeAttribute("hidden");
}
