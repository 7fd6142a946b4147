/** Finds the cause of a complaint check by check; what is kept, and where, is told by what is around it. */
import { el } from "../cards/kit/dom.js";
import { nextTask } from "../phone/next-task.js";
import { standing } from "./client.js";
import * as kept from "./kept.js";
import { StandingView } from "./standing-view.js";

/** @import { Finding, Findings } from "./kept.js" */
/** @import { FaultData, Result } from "./types.js" */

/**
 * The place that the live part stands in: a page of the site, or a manual in one file.
 *
 * @typedef {object} Around
 * @property {(url: string) => string | null} href an address of the site as a link from here; null if it leads nowhere
 * @property {(findings: Findings, family: string) => Promise<void>} keep rejects with the reason where that fails
 * @property {(family: string) => void} chosen
 * @property {(family: string, finding: Finding) => Promise<void>} [toCard] begins a job card; not where there are none
 */

/** What the reader can go by where Python does not run. */
export const PAPER = "Go by the table below meanwhile.";

/** So long, in ms, an answer may take before the reader is told that it is coming, and then why. */
const SOON = 300;
const LONG = 3_000;

/** The live part of a complaint's page. */
export class LiveFault {
  /**
   * @param {HTMLElement} root
   * @param {FaultData} data
   * @param {Findings} findings
   * @param {string} family
   * @param {Around} around
   */
  constructor(root, data, findings, family, around) {
    this.root = root;
    this.data = data;
    this.findings = findings;
    this.family = family;
    this.around = around;
    this.turn = 0;
    this.tools = /** @type {Element} */ (root.querySelector(".uh-find__tools"));
    this.view = this.viewOf(root.querySelector(".uh-standing") ?? undefined);
    this.select = /** @type {HTMLSelectElement|null} */ (root.querySelector(".uh-find__family select"));
    this.takeChoice();
  }

  finding() {
    return this.findings[this.family];
  }

  /** @param {Element} [first] */
  viewOf(first) {
    const act = {
      result: (/** @type {string} */ check, /** @type {Result} */ result) =>
        this.change(kept.withResult(this.finding(), { check, result })),
      undo: (/** @type {string} */ check) => this.change(kept.withoutResult(this.finding(), check)),
      none: () => this.change({ ...this.finding(), isStopped: true }),
      goOn: () => this.change({ ...this.finding(), isStopped: false }),
    };
    return new StandingView({ family: this.data.by_family[this.family], href: this.around.href, act }, first);
  }

  /** Takes over the choice of the family, which the page has where there are several. */
  takeChoice() {
    if (!this.select) return;
    this.select.value = this.family;
    this.select.addEventListener("change", () => this.choose(this.select?.value ?? this.family));
  }

  /** @param {string} family */
  choose(family) {
    this.family = family;
    if (this.select) this.select.value = family;
    const view = this.viewOf();
    this.view.node.replaceWith(view.node);
    this.view = view;
    this.around.chosen(family);
    void this.work();
  }

  /**
   * Keeps what is new, and shows where that leads.
   *
   * @param {Finding} finding
   */
  change(finding) {
    this.findings[this.family] = finding;
    void this.work(this.keep()).then((isShown) => isShown && this.view.focusNext());
  }

  async keep() {
    try {
      await this.around.keep(this.findings, this.family);
      this.unkept = "";
    } catch (error) {
      this.unkept = `This phone does not store the results: ${inWords(error)}. They stay while this page is open.`;
    }
    this.drawTools();
  }

  /**
   * Asks where the search stands now; only the newest answer is shown.
   *
   * @param {Promise<void>} [isKept] a result shows once it is stored, or cannot be
   * @returns {Promise<boolean>} whether this one was shown
   */
  async work(isKept) {
    const turn = (this.turn += 1);
    const { view } = this;
    const { results, isStopped } = this.finding();
    this.root.dataset.answered = "no";
    const waits = [
      setTimeout(() => view.wait("Working out the next check."), SOON),
      setTimeout(() => view.wait("Working out the next check. The first time takes longest."), LONG),
    ];
    try {
      const { complaint } = this.data.by_family[this.family];
      const [told] = await Promise.all([standing(complaint, results), isKept]);
      await nextTask(); // to take it in was one
      if (turn !== this.turn) return false;
      view.show(told, results, { isStopped });
      this.root.dataset.answered = "yes";
    } catch (error) {
      if (turn !== this.turn) return false;
      view.failed(inWords(error), () => void this.work(), PAPER);
      this.root.dataset.answered = "failed";
    } finally {
      waits.forEach(clearTimeout);
    }
    this.drawTools();
    return true;
  }

  drawTools() {
    const finding = this.finding();
    const plain = { type: "button", class: "uh-button uh-button--plain" };
    const again = () => this.change(kept.begunAgain(this.finding()));
    const back = () => this.change(kept.broughtBack(this.finding()));
    const parts = [
      this.around.toCard ? el("button", { type: "button", class: "uh-button", onclick: () => void this.card() }, "Take this into a job card") : null,
      finding.results.length ? el("button", { ...plain, onclick: again }, "Begin again") : null,
      finding.before.length ? el("button", { ...plain, onclick: back }, "Bring the results back") : null,
      this.unkept ? el("p", { class: "uh-warn", role: "alert" }, this.unkept) : null,
    ];
    this.tools.replaceChildren(...parts.filter((part) => part !== null));
  }

  /** Hands the family and its results to a new card. */
  async card() {
    try {
      await this.around.toCard?.(this.family, this.finding());
    } catch (error) {
      this.view.say(`No card was begun: ${inWords(error)}.`);
    }
  }
}

/**
 * @param {unknown} error
 * @returns {string} its reason, to be put into a sentence
 */
export const inWords = (error) => (error instanceof Error ? error.message : String(error)).replace(/[.]$/, "");
