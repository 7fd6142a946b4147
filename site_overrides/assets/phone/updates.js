/** A new version of the manual: announced, taken on consent, never into what is not stored yet. */
import { Workbox } from "../vendor/workbox-window.js";
import { ROOT } from "./site.js";

/** How long a browser may take to let a version answer, in ms. It does so at once, or not at all. */
const PATIENCE = 3000;

/**
 * Registers the service worker and watches for a newer version: one that waits is stored whole.
 * @returns {Promise<ServiceWorkerRegistration | undefined>}
 */
export async function watchVersions() {
  const worker = new Workbox(new URL("sw.js", ROOT).href, { scope: ROOT });
  let isAsked = false;
  worker.addEventListener("waiting", () => {
    offer("A new version of this manual is stored and ready.", "Take it now", () => {
      isAsked = true;
      worker.messageSkipWaiting();
      setTimeout(reload, PATIENCE); // Chromium forgets it where this page wants a file at that moment.
    });
  });
  worker.addEventListener("controlling", ({ isUpdate, isExternal }) => {
    if (isAsked) reload();
    else if (isUpdate || isExternal) {
      offer("Another window took a new version of this manual.", "Load it here", reload);
    }
  });
  return worker.register({ immediate: true });
}

/**
 * Shows a notice with one button; while a card is open it waits out of sight.
 * @param {string} text
 * @param {string} verb
 * @param {() => void} act
 */
function offer(text, verb, act) {
  const notice = document.createElement("aside");
  notice.className = "uh-notice";
  notice.setAttribute("role", "status");
  const words = Object.assign(document.createElement("p"), { textContent: text });
  const button = Object.assign(document.createElement("button"), { textContent: verb, type: "button" });
  button.className = "uh-button";
  button.addEventListener("click", () => {
    const unstored = whatIsUnstored();
    if (unstored) words.textContent = `${unstored} is not stored yet. Store it, then take the new version.`;
    else act();
  });
  notice.append(words, button);
  const show = () => {
    notice.hidden = document.documentElement.dataset.card === "open";
  };
  new MutationObserver(show).observe(document.documentElement, { attributeFilter: ["data-card"] });
  show();
  document.querySelector(".uh-notice")?.remove();
  document.body.prepend(notice);
}

/** Loads the page anew, unless something came in between that would be lost. */
function reload() {
  if (!whatIsUnstored()) location.reload();
}

/** What the page has not put on disk yet, or "". */
function whatIsUnstored() {
  const marks = document.documentElement.dataset;
  if ("cardUnstored" in marks) return "A card step";
  return "draftUnstored" in marks ? "The draft" : "";
}
