/** Loaded by every page: starts what the page holds, then stores the manual on the phone. */
import { calculators } from "./calculator-client.js";

/** Longest time that storing waits for a calculator's first answer or for the cards, in ms. */
const FIRST = 10_000;

const has = (/** @type {string} */ id) => document.getElementById(id) !== null;

const cards = has("cards") ? import("../cards/start.js") : null;
if (has("fault")) void import("../fault/start.js");
if (has("drafts")) void import("../drafting/start.js");
if (has("calculator") && location.hash.startsWith("#card=")) void import("../cards/link/write-back.js");
if (has("stored")) void import("./stored.js");

/** The first answer or the cards, where the page has them; a slow phone does one thing at a time. */
async function firstShown() {
  const begun = cards?.then(({ shown }) => shown) ?? firstAnswer();
  await Promise.race([begun, new Promise((done) => setTimeout(done, FIRST))]);
}

async function firstAnswer() {
  if (!has("calculator")) return;
  calculators.start(); // Before anything else is loaded: Python takes longest.
  const { answered } = await import("./calculator.js");
  await answered;
}

/** Until the page is there whole: storing shares the line with nothing that is being waited for. */
const loaded = () => (document.readyState === "complete" ? null : new Promise((done) => addEventListener("load", done, { once: true })));

/** Nothing at the top waits: what the page holds would wait with it. */
async function begin() {
  await firstShown().catch(() => {});
  await loaded();
  const { keepOffline } = await import("./offline-state.js");
  await keepOffline();
}

void begin();
