// The search for the cause of a complaint, on its card: the next check, its results, the cause.

import { cardName, notStored, notice, timeWords } from "../app.js";
import { el } from "../kit/dom.js";
import { readFault, readIndex, siteRoot } from "../plan/manual.js";
import { canonical } from "../record/canonical.js";
import { standing, wakeEngine } from "../../fault/client.js";
import { StandingView } from "../../fault/standing-view.js";
import { AskSenior } from "./ask-senior.js";
import { anotherComplaint } from "./another.js";
import { CauseFound } from "./cause-found.js";
import { checksOf, countedResults } from "./counted.js";
import { sayOtherwise, writtenOrder } from "./own-result.js";
import { Ways } from "./ways.js";
import { RESULT_WORDS, originWords } from "./words.js";

/** @import { App, View } from "../app.js" */
/** @import { Kind } from "../record/events.js" */
/** @import { Session } from "../record/session.js" */
/** @import { CardState, FaultState, Index } from "../types.js" */
/** @import { FamilyData, FaultData, Result, Told } from "../../fault/types.js" */
/** @import { Counted } from "./counted.js" */

/** So long, in ms, Python may take before the reader is told why. */
const LONG = 3_000;

/**
 * @param {App} app
 * @param {Session} session
 * @param {CardState} card
 * @returns {Promise<View>}
 */
export async function faultView(app, session, card) {
  const asked = location.hash.split("/")[3] ?? "";
  const fault = card.faults.get(asked) ?? [...card.faults.values()][0] ?? null;
  if (fault) wakeEngine(); // it takes longest
  const index = await readIndex().catch(() => null);
  if (!fault) return noComplaint(app, session, card, index);
  try {
    const data = await readFault(fault.id);
    const family = data.by_family[card.vehicle.family] ?? null;
    const wrong = family ? "" : `The manual does not tell how to find the cause of this complaint on the ${card.vehicle.family_title}.`;
    return new FaultView(app, session, card, fault, { data, family, index, wrong });
  } catch (error) {
    const wrong = error instanceof Error ? error.message : String(error);
    return new FaultView(app, session, card, fault, { data: null, family: null, index, wrong });
  }
}

/**
 * What the manual says, as far as it could be read.
 *
 * @typedef {{data: FaultData|null, family: FamilyData|null, index: Index|null, wrong: string}} Manual
 */

export class FaultView {
  awake = true;

  /**
   * @param {App} app
   * @param {Session} session
   * @param {CardState} card
   * @param {FaultState} fault
   * @param {Manual} manual
   */
  constructor(app, session, card, fault, manual) {
    this.app = app;
    this.session = session;
    this.card = card;
    this.fault = fault;
    this.manual = manual;
    this.seen = "";
    this.turn = 0;
    /** @type {Told|null} */
    this.told = null;
    this.toldFor = "";
    this.moveOn = false;
    /** @type {Counted[]} */
    this.results = [];
    this.trouble = el("div");
    this.said = el("p", { class: "uh-cause__said", role: "status" });
    this.ways = new Ways(this);
    this.found = new CauseFound(this);
    this.senior = new AskSenior(this);
    this.view = this.standingView();
    this.more = el("div");
    this.node = this.frame();
    this.title = `Fault finding, ${card.vehicle.identification}`;
  }

  /** Procedures of checks and causes are drawn by this page: they go onto the card. @private */
  standingView() {
    const family = { ...(this.manual.family ?? { complaint: {} }), checks: {}, causes: {} };
    const act = {
      result: (/** @type {string} */ check, /** @type {Result} */ result) => void this.give(check, result),
      undo: (/** @type {string} */ check) => void this.takeBack(check),
      none: () => this.senior.ask(),
      goOn: () => void this.senior.takeBack(),
    };
    return new StandingView({ family, href: (url) => new URL(url, siteRoot()).href, act });
  }

  /** @private */
  frame() {
    const { card, fault, manual } = this;
    const way = (/** @type {string} */ to, /** @type {string} */ words) => el("li", {}, el("a", { href: `#card/${card.id}${to}` }, words));
    const page = manual.data && el("li", {}, el("a", { href: new URL(manual.data.url, siteRoot()).href }, "The complaint’s page, with the table"));
    return el(
      "section",
      { class: "uh-cause" },
      el("h2", { tabindex: -1 }, "Fault finding"),
      el("p", {}, cardName(card)),
      this.complaints(),
      el("blockquote", { class: "uh-complaint" }, fault.complaint),
      this.trouble,
      this.said,
      ...(manual.wrong ? [notice(manual.wrong)] : []),
      this.view.node,
      this.senior.place,
      this.found.place,
      this.more,
      card.closed ? null : anotherComplaint(this.app, this.session, card, manual.index),
      el(
        "nav",
        { "aria-label": "This card" },
        el("ul", { class: "uh-contents" }, way("", "Back to the work"), way("/add", "Add procedures"), way("/findings", "Findings"), page),
      ),
    );
  }

  /** The complaints of the card, where there are several. @private */
  complaints() {
    const all = [...this.card.faults.values()];
    if (all.length < 2) return null;
    const links = all.map(({ id, complaint }) => {
      const current = id === this.fault.id ? "page" : null;
      return el("li", {}, el("a", { href: `#card/${this.card.id}/fault/${id}`, "aria-current": current }, complaint));
    });
    return el("nav", { "aria-label": "Complaints", class: "uh-cause__all" }, el("ul", { class: "uh-contents" }, ...links));
  }

  update() {
    this.card = this.session.state ?? this.card;
    this.fault = this.card.faults.get(this.fault.id) ?? this.fault;
    this.showTrouble();
    this.results = countedResults(this.card, this.fault, this.manual.family);
    const { question, answer } = this.fault;
    const jobs = this.card.jobs.map((job) => [job.text.id, job.steps.map(({ shape }) => shape)]);
    const named = this.card.findings.map(({ id, cause }) => [id, cause]);
    const seen = canonical([this.results, question, answer, jobs, named, this.card.closed, this.session.waiting.size]);
    if (seen === this.seen) return;
    this.seen = seen;
    void this.work();
  }

  /** @private */
  showTrouble() {
    const words = this.session.trouble;
    if (words === (this.trouble.dataset.words ?? "")) return;
    this.trouble.dataset.words = words;
    this.trouble.replaceChildren(...notStored(this.session));
  }

  /**
   * Asks where the search stands, unless the same was asked before; only the newest answer is shown.
   *
   * @private
   */
  async work() {
    const { family } = this.manual;
    if (!family) return this.drawWithout();
    const pairs = this.engineResults();
    const asked = canonical(pairs);
    if (this.told && asked === this.toldFor) return this.draw(this.told);
    const turn = (this.turn += 1);
    const late = setTimeout(() => turn === this.turn && !this.told && this.drawOrder(""), LONG);
    this.view.say("Working out the next check.");
    try {
      const told = await standing(family.complaint, pairs);
      if (turn !== this.turn) return;
      [this.told, this.toldFor] = [told, asked];
      this.draw(told);
    } catch (error) {
      if (turn !== this.turn) return;
      this.told = null;
      this.drawOrder(error instanceof Error ? error.message.replace(/[.]$/, "") : String(error));
    } finally {
      clearTimeout(late);
    }
  }

  /** Results of checks that the manual still has. @private */
  engineResults() {
    const known = new Set(checksOf(this.manual.family).map(({ id }) => id));
    return this.results.filter(({ check }) => known.has(check)).map(({ check, result }) => ({ check, result }));
  }

  /** The results as the standing shows them. */
  given() {
    return this.results.map((counted) => {
      const signed = `by ${counted.mark.who}, ${timeWords(counted.mark.at)}`;
      const note = [originWords(counted), counted.said?.note, signed].filter(Boolean).join(", ");
      return { check: counted.check, result: counted.result, note, isFixed: counted.said === null };
    });
  }

  /**
   * @private
   * @param {Told} told
   */
  draw(told) {
    const isStopped = this.senior.isOpen;
    this.view.show(told, this.given(), { isStopped });
    this.ways.fill(this.view.drawn);
    this.found.fill(this.view.drawn, told);
    this.senior.fill(this.view.drawn);
    this.more.replaceChildren(...(this.card.closed ? [] : sayOtherwise(this)));
    this.settle();
    this.node.dataset.answered = "yes";
  }

  /**
   * The checks as the manual writes them: where the order takes long, or cannot be worked out.
   *
   * @private
   * @param {string} reason why it cannot, "" while that is not known
   */
  drawOrder(reason) {
    if (reason) this.view.failed(reason, () => void this.again());
    else this.view.say("Working out the next check. The first time takes longest.");
    this.view.drawn.replaceChildren(...writtenOrder(this));
    this.ways.fill(this.view.drawn);
    this.senior.fill(this.view.drawn);
    this.settle();
    this.node.dataset.answered = reason ? "failed" : "no";
  }

  /** Without the manual: what the card itself knows. @private */
  drawWithout() {
    const lines = this.results.map(({ name, result }) => el("li", {}, `${name}: `, el("strong", {}, RESULT_WORDS[result])));
    this.view.drawn.replaceChildren(...(lines.length > 0 ? [el("h3", {}, "Done so far"), el("ul", {}, ...lines)] : []));
    this.view.say("");
    this.node.dataset.answered = "failed";
  }

  /** On a closed card nothing can be pressed; after a result the reader is taken to what comes next. @private */
  settle() {
    if (this.card.closed) {
      for (const one of this.view.node.querySelectorAll(".uh-next__results, .uh-none, .uh-done button")) one.remove();
    }
    if (!this.moveOn) return;
    this.moveOn = false;
    this.view.focusNext();
  }

  /** @private */
  again() {
    this.seen = "";
    this.update();
  }

  /**
   * A result is shown once it is stored.
   *
   * @param {string} check
   * @param {Result} result
   */
  async give(check, result) {
    const { name = "", minutes = 0 } = checksOf(this.manual.family).find(({ id }) => id === check) ?? {};
    const value = { fault: this.fault.id, check, result, name, minutes };
    await this.store(`${check}`, "result", value, `Stored: ${name}, ${RESULT_WORDS[result].toLowerCase()}.`);
  }

  /** @param {string} check */
  async takeBack(check) {
    const own = this.results.find((one) => one.check === check)?.said;
    if (own) await this.store(check, "undo", { of: own.mark.event }, `Taken back: ${own.name}.`);
  }

  /**
   * Stores something about this complaint; while the same waits already it does nothing.
   *
   * @param {string} about
   * @param {Kind} kind
   * @param {Record<string, unknown>} value
   * @param {string} words said once it is stored
   */
  async store(about, kind, value, words) {
    const key = `fault|${this.fault.id}|${about}`;
    if (this.card.closed || this.session.waitingFor(key)) return false;
    this.say("Being stored.");
    this.moveOn = kind === "result";
    const stored = await this.session.record(key, { who: this.app.initials, kind, value });
    this.say(stored ? words : "");
    return stored;
  }

  /** @param {string} words */
  say(words) {
    this.said.textContent = words;
  }
}

/**
 * A card without a complaint of the manual: which one is it?
 *
 * @param {App} app
 * @param {Session} session
 * @param {CardState} card
 * @param {Index|null} index
 * @returns {View}
 */
function noComplaint(app, session, card, index) {
  const trouble = el("div");
  const choice = card.closed ? null : anotherComplaint(app, session, card, index);
  const node = el(
    "section",
    { class: "uh-cause" },
    el("h2", { tabindex: -1 }, "Fault finding"),
    el("p", {}, cardName(card)),
    trouble,
    el("p", {}, choice ? "The card has no complaint of the manual yet." : "The card has no complaint of the manual."),
    choice,
    el("p", {}, el("a", { href: `#card/${card.id}` }, "Back to the work")),
  );
  choice?.setAttribute("open", "");
  return { node, awake: true, update: () => trouble.replaceChildren(...notStored(session)) };
}
