/** A complaint's page: finds the cause check by check, on this phone, without a network. */
import { el } from "../cards/kit/dom.js";
import { remember, remembered } from "../cards/record/store.js";
import { ROOT, readJson } from "../phone/site.js";
import { wakeEngine } from "./client.js";
import { familyToBegin, readFindings } from "./kept.js";
import { LiveFault, PAPER, inWords } from "./live.js";

/** @import { Around } from "./live.js" */
/** @import { FaultData } from "./types.js" */

/** Names under which this phone remembers: the family used last, and the results of a complaint. */
const FAMILY = "fault family";
const resultsName = (/** @type {string} */ fault) => `fault results ${fault}`;

/** What a new job card takes over, see `cards/plan/`. */
const HAND_OVER = "fault hand-over";

/** The way from this page to the site's front page, as the page's own links have it. */
const BACK = document.querySelector('meta[name="uh-root"]')?.getAttribute("content");

/**
 * @param {string} fault
 * @returns {Around} the site: this phone's store, its pages and its job cards
 */
const site = (fault) => ({
  href: (url) => `${BACK}/${url}`,
  keep: (findings) => remember(resultsName(fault), findings),
  chosen: (family) => void remember(FAMILY, family).catch(() => {}),
  async toCard(family, { results }) {
    await remember(HAND_OVER, { fault, family, results, at: new Date().toISOString() });
    location.assign(new URL(`cards/#new/${fault}`, ROOT));
  },
});

/** @param {HTMLElement} root */
async function start(root) {
  wakeEngine(); // it takes longest
  /** @type {FaultData} */
  const data = await readJson(`fault/data/${root.dataset.fault}.json`);
  const [results, last] = await Promise.all(
    [resultsName(data.id), FAMILY].map((name) => remembered(name).catch(() => undefined)),
  );
  const findings = readFindings(results, data);
  const live = new LiveFault(root, data, findings, familyToBegin(last, data), site(data.id));
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
