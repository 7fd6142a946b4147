/** A complaint's page in a manual's file: names the next check; the results stand in the address line alone. */
import { el } from "../cards/kit/dom.js";
import { wakeEngine } from "../fault/client.js";
import { familyToBegin, readFindings } from "../fault/kept.js";
import { LiveFault, PAPER, inWords } from "../fault/live.js";
import { read } from "./parts.js";

/** @import { Findings } from "../fault/kept.js" */
/** @import { FaultData } from "../fault/types.js" */

/** @type {Promise<Record<string, FaultData>> | undefined} */
let reading;

/** What the file knows of its complaints, by their ids. */
const complaints = () => (reading ??= read("faults"));

/** What a reader must know before the first result. */
const UNKEPT = "Nothing is recorded here: the results stay in this file's address line until it is closed.";

/** One complaint's page, live from when it is first opened. */
export class FaultPage {
  /**
   * @param {HTMLElement} root
   * @param {(given: URLSearchParams) => void} keep puts family and results into the address
   */
  constructor(root, keep) {
    this.root = root;
    this.keep = keep;
  }

  /** @param {URLSearchParams} given the family and the results that the address holds */
  async start(given) {
    wakeEngine(); // It takes longest.
    this.root.querySelector("h2")?.after(el("p", { class: "uh-pack__unkept" }, UNKEPT));
    try {
      const data = (await complaints())[this.root.dataset.fault ?? ""];
      if (!data) throw new Error("this file does not hold its checks");
      const family = familyToBegin(given.get("family"), data);
      this.live = new LiveFault(this.root, data, findingsOf(given, family, data), family, this.#file());
      await this.live.work();
    } catch (error) {
      const words = `The next check cannot be worked out here: ${inWords(error)}. ${PAPER}`;
      this.root.append(el("p", { class: "uh-warn", role: "alert" }, words));
    }
  }

  /**
   * Goes where an address leads that was used before, or that somebody made.
   * @param {URLSearchParams} given
   */
  fill(given) {
    const { live } = this;
    if (!live || String(given) === String(written(live.findings, live.family))) return;
    const family = familyToBegin(given.get("family"), live.data);
    live.findings[family] = findingsOf(given, family, live.data)[family];
    live.choose(family);
  }

  /** @returns {import("../fault/live.js").Around} */
  #file() {
    return {
      href: placeOf,
      keep: async (findings, family) => this.keep(written(findings, family)),
      chosen: (family) => this.live && this.keep(written(this.live.findings, family)),
    };
  }
}

/**
 * The address of a page as its place in this file.
 * @param {string} url
 */
function placeOf(url) {
  const name = url.replace(/\/$/, "");
  return document.getElementById(name) ? `#${name}` : null;
}

/**
 * @param {Findings} findings
 * @param {string} family
 */
function written(findings, family) {
  const results = findings[family].results.map(({ check, result }) => `${check}.${result}`);
  return new URLSearchParams([["family", family], ...results.map((each) => ["result", each])]);
}

/**
 * What an address says, as far as the complaint knows it.
 * @param {URLSearchParams} given
 * @param {string} family
 * @param {FaultData} data
 */
function findingsOf(given, family, data) {
  const results = given.getAll("result").map((each) => {
    const dot = each.lastIndexOf(".");
    return { check: each.slice(0, dot), result: each.slice(dot + 1) };
  });
  return readFindings({ [family]: { results } }, data);
}
