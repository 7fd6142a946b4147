/** A complaint's page: finds the cause check by check, on this phone, without a network. */
import { el } from "../cards/kit/dom.js";
import { remember, remembered } from "../cards/record/store.js";
import { ROOT, readJson } from "../phone/site.js";
import { standing, wakeEngine } from "./client.js";
import * as kept from "./kept.js";
import { StandingView } from "./standing-view.js";

/** @import { Finding, Findings } from "./kept.js" */
/** @import { FaultData, Result } from "./types.js" */

/** Names under which this phone remembers: the family used last, and the results of a complaint. */
const FAMILY = "fault family";
const resultsName = (/** @type {string} */ fault) => `fault results ${fault}`;

/** What a new job card takes over, see `cards/plan/`. */
const HAND_OVER = "fault hand-over";

/** What the reader can go by where Python does not run. */
const PAPER = "Go by the table below meanwhile.";

/** So long, in ms, an answer may take before the reader is told that it is coming, and then why. */
const SOON = 300;
const LONG = 3_000;

/** The live part of the page. */
class LiveFault {
  /**
   * @param {HTMLElement} root
   * @param {FaultData} data
   * @param {Findings} findings
   * @param {string} family
   */
  constructor(root, data, findings, family) {
    this.root = root;
    this.data = data;
    this.findings = findings;
    this.family = family;
    this.turn = 0;
    this.tools = el("div", { class: "uh-find__tools" });
    this.place = /** @type {Element} */ (root.querySelector(".uh-standing"));
    this.view = this.viewOf(this.place);
    this.place.replaceWith(this.view.node);
    this.view.node.after(this.tools);
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
    const href = (/** @type {string} */ url) => new URL(url, ROOT).href;
    return new StandingView({ family: this.data.by_family[this.family], href, act }, first);
  }

  /** Takes over the choice of the family, which the page has where there are several. */
  takeChoice() {
    const select = /** @type {HTMLSelectElement|null} */ (this.root.querySelector("#fault-family"));
    if (!select) return;
    select.value = this.family;
    select.addEventListener("change", () => this.choose(select.value));
  }

  /** @param {string} family */
  choose(family) {
    this.family = family;
    const view = this.viewOf();
    this.view.node.replaceWith(view.node);
    this.view = view;
    void remember(FAMILY, family).catch(() => {});
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
      await remember(resultsName(this.data.id), this.findings);
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
    const { results, before } = this.finding();
    const plain = { type: "button", class: "uh-button uh-button--plain" };
    const again = () => this.change(kept.begunAgain(this.finding()));
    const back = () => this.change(kept.broughtBack(this.finding()));
    const card = () => void this.toCard().catch((error) => this.view.say(`No card was begun: ${inWords(error)}.`));
    const parts = [
      el("button", { type: "button", class: "uh-button", onclick: card }, "Take this into a job card"),
      results.length ? el("button", { ...plain, onclick: again }, "Begin again") : null,
      before.length ? el("button", { ...plain, onclick: back }, "Bring the results back") : null,
      this.unkept ? el("p", { class: "uh-warn", role: "alert" }, this.unkept) : null,
    ];
    this.tools.replaceChildren(...parts.filter((part) => part !== null));
  }

  /** Hands the complaint, the family and the results to a new card. */
  async toCard() {
    const { results } = this.finding();
    const { id: fault } = this.data;
    await remember(HAND_OVER, { fault, family: this.family, results, at: new Date().toISOString() });
    location.assign(new URL(`cards/#new/${fault}`, ROOT));
  }
}

/** @param {unknown} error */
const inWords = (error) => (error instanceof Error ? error.message : String(error)).replace(/[.]$/, "");

/** @param {HTMLElement} root */
async function start(root) {
  wakeEngine(); // it takes longest
  /** @type {FaultData} */
  const data = await readJson(`fault/data/${root.dataset.fault}.json`);
  const [results, last] = await Promise.all(
    [resultsName(data.id), FAMILY].map((name) => remembered(name).catch(() => undefined)),
  );
  const live = new LiveFault(root, data, kept.readFindings(results, data), kept.familyToBegin(last, data));
  await live.work();
}

const root = document.getElementById("fault");
if (root) {
  await start(root).catch((error) => {
    const words = `The next check cannot be worked out here: ${inWords(error)}. ${PAPER}`;
    root.append(el("p", { class: "uh-warn", role: "alert" }, words));
    root.dataset.answered = "failed";
  });
}
