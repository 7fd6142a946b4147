// All findings of a card: the senior tech says what became of each.

import { cardName, notStored } from "../../app.js";
import { el } from "../../kit/dom.js";
import { URGENCY_WORDS } from "../../kit/finding-words.js";
import { canonical } from "../../record/canonical.js";
import { steps } from "../../record/fold.js";
import { photoButton } from "../photos/photo-button.js";
import { photoStrip } from "../photos/photo-strip.js";
import { decideForm } from "./decide-form.js";
import { findingForm } from "./finding-form.js";
import { findingLine } from "./finding-line.js";

/** @import { App } from "../../app.js" */
/** @import { Session } from "../../record/session.js" */
/** @import { CardState, FindingState } from "../../types.js" */
/** @import { Kind } from "../../record/events.js" */

/**
 * @param {App} app
 * @param {Session} session
 * @param {CardState} card
 */
export function findingsView(app, session, card) {
  return new FindingsView(app, session, card);
}

class FindingsView {
  awake = true;

  /**
   * @param {App} app
   * @param {Session} session
   * @param {CardState} card
   */
  constructor(app, session, card) {
    this.app = app;
    this.session = session;
    this.card = card;
    this.seen = "";
    this.list = el("div");
    this.said = el("p", { class: "uh-unseen", "aria-live": "polite" });
    this.trouble = el("div");
    this.place = el("div");
    this.again = el("button", { class: "uh-button", type: "button", onclick: () => this.write() }, "Write down a finding");
    this.node = el(
      "section",
      { class: "uh-card__findings" },
      el("h2", { tabindex: -1 }, "Findings"),
      el("p", {}, cardName(card)),
      this.trouble,
      this.list,
      this.place,
      el(
        "p",
        { class: "uh-card__answers" },
        this.again,
        el("a", { class: "uh-button uh-button--plain", href: `#card/${card.id}` }, "Back to the work"),
      ),
      this.said,
    );
  }

  update() {
    this.card = this.session.state ?? this.card;
    this.again.hidden = this.card.closed !== null;
    this.trouble.replaceChildren(...notStored(this.session));
    const seen = canonical([this.card.findings, this.card.closed, this.session.waiting.size]);
    if (seen === this.seen) return;
    this.seen = seen;
    const order = Object.keys(URGENCY_WORDS);
    const sorted = [...this.card.findings].sort((a, b) => order.indexOf(a.urgency) - order.indexOf(b.urgency));
    const lines = sorted.map((finding) => this.line(finding));
    const none = el("p", {}, "Nothing is found yet. Write down what you see; the owner hears of it.");
    this.list.replaceChildren(lines.length > 0 ? el("ul", { class: "uh-findings" }, ...lines) : none);
  }

  /**
   * @private
   * @param {FindingState} finding
   */
  line(finding) {
    const subject = { job: "", step: 0, finding: finding.id };
    const strip = photoStrip(this.app, this.session, finding.photos, subject);
    return findingLine(finding, ...this.whereFound(finding), ...strip, ...(this.card.closed ? [] : [this.acts(finding)]));
  }

  /**
   * @private
   * @param {FindingState} finding
   */
  whereFound({ job, step }) {
    const at = steps(this.card).findIndex((one) => one.job === job && one.text.number === step);
    const title = this.card.jobs.find((one) => one.id === job)?.text.title;
    if (at < 0) return [];
    return [el("p", {}, el("a", { href: `#card/${this.card.id}/${at + 1}` }, `${title}, step ${step}`))];
  }

  /**
   * @private
   * @param {FindingState} finding
   */
  acts(finding) {
    const plain = { class: "uh-button uh-button--plain", type: "button" };
    const tell = { say: (/** @type {string} */ words) => this.say(words), refuse: (/** @type {string} */ words) => this.refuse(words) };
    const subject = { job: "", step: 0, finding: finding.id };
    const decide = finding.decision ? "Decide anew" : "Decide";
    const undo = () => void this.record(finding.id, "undo", { of: finding.id }, "Taken back: the finding.");
    return el(
      "div",
      { class: "uh-card__also" },
      el("button", { ...plain, "aria-label": `${decide}: ${finding.what}`, onclick: () => this.decide(finding) }, decide),
      photoButton(this.app, this.session, subject, tell, ` of ${finding.what}`),
      el("button", { ...plain, "aria-label": `Undo the finding ${finding.what}`, onclick: undo }, "Undo"),
    );
  }

  /** @private */
  write() {
    this.ask(findingForm({
      answer: ({ what, urgency }) =>
        void this.record("finding", "finding", { job: "", step: 0, what, urgency }, "Stored: the finding."),
      away: () => this.done(),
    }));
  }

  /**
   * @private
   * @param {FindingState} finding
   */
  decide(finding) {
    this.ask(decideForm(finding, {
      answer: ({ decision, note }) =>
        void this.record(finding.id, "decide", { of: finding.id, decision, note }, "Stored: the decision."),
      away: () => this.done(),
    }), finding.what);
  }

  /**
   * @private
   * @param {HTMLElement} form
   * @param {string} [what] the finding that it is about
   */
  ask(form, what = "") {
    this.place.replaceChildren(...(what ? [el("p", { class: "uh-finding__what" }, what)] : []), form);
    /** @type {HTMLElement|null} */ (form.querySelector("textarea, input"))?.focus();
    form.scrollIntoView({ block: "nearest" });
  }

  /** @private */
  done() {
    this.place.replaceChildren();
    this.again.focus();
  }

  /**
   * @private
   * @param {string} key
   * @param {Kind} kind
   * @param {Record<string, unknown>} value
   * @param {string} words
   */
  async record(key, kind, value, words) {
    this.done();
    const stored = await this.session.record(key, { who: this.app.initials, kind, value });
    if (stored) this.say(words);
  }

  /** @private @param {string} words */
  say(words) {
    this.said.textContent = words;
  }

  /** @private @param {string} words */
  refuse(words) {
    this.place.replaceChildren(el("p", { class: "uh-field__error", role: "alert" }, words));
  }
}
