/** The offline page: what is stored and since when, with a button to store or repair it. */
import { check } from "./daily-check.js";
import { keeper } from "./keeper.js";
import { noteStored, storedSince } from "./since.js";
import { textState } from "./text-store.js";

const DATE = new Intl.DateTimeFormat("en-GB", { dateStyle: "long", timeStyle: "short" });

/**
 * @param {string} name
 * @param {string} id
 */
function entry(name, id) {
  const row = document.createElement("div");
  const value = Object.assign(document.createElement("dd"), { id, textContent: "Looking" });
  row.append(Object.assign(document.createElement("dt"), { textContent: name }), value);
  return row;
}

/** @param {number} bytes */
const megabytes = (bytes) => `${(bytes / 1e6).toFixed(1)} MB`;

/** @param {Date | null} date */
const since = (date) => (date ? `, since ${DATE.format(date)}` : "");

async function textWords() {
  const state = await textState();
  if (!state?.isWhole) return "Not stored";
  const { version, files, size } = state;
  return `Readable offline${since(storedSince("text", version))}. ${files} files, ${megabytes(size)}`;
}

async function runtimeWords() {
  const { stored, wanted, version } = await keeper("state");
  if (stored < wanted) return `Not all stored: ${megabytes(stored)} of ${megabytes(wanted)}`;
  noteStored("runtime", version);
  return `Calculators offline${since(storedSince("runtime", version))}. ${megabytes(wanted)}`;
}

/** More than is fetched: it is stored unpacked, and what the calculators start from once more for a quick start. */
async function roomWords() {
  const taken = (await navigator.storage?.estimate?.())?.usage;
  if (taken === undefined) return "This browser does not tell";
  return `About ${Math.ceil(taken / 1e6)} MB on this phone, job cards among it`;
}

async function keptWords() {
  const isKept = await navigator.storage?.persisted?.();
  return isKept
    ? "The browser keeps it until you remove it."
    : "The browser may clear it when the phone runs out of room. Put the manual on the home screen to keep it.";
}

/** What the page tells: its name, the end of its id, and who knows. */
const TOLD = /** @type {const} */ ([
  ["Manual text", "text", textWords],
  ["Calculators", "runtime", runtimeWords],
  ["Room taken", "room", roomWords],
  ["Kept", "kept", keptWords],
]);

/** Fills the page and works the button. */
class StoredPage {
  /** @param {HTMLElement} root */
  constructor(root) {
    this.list = Object.assign(document.createElement("dl"), { className: "uh-stored" });
    this.list.append(...TOLD.map(([name, end]) => entry(name, `stored-${end}`)));
    this.progress = Object.assign(document.createElement("progress"), { className: "uh-progress", hidden: true });
    this.progress.setAttribute("aria-label", "Storing the calculators");
    this.said = Object.assign(document.createElement("p"), { className: "uh-stored__said" });
    this.said.setAttribute("role", "status");
    this.button = Object.assign(document.createElement("button"), { type: "button", className: "uh-button" });
    this.button.textContent = "Store or repair";
    this.button.addEventListener("click", () => void this.repair());
    root.replaceChildren(this.list, this.progress, this.said, this.button);
  }

  async look() {
    await Promise.all(TOLD.map(([, end, words]) => this.fill(`stored-${end}`, words)));
  }

  /**
   * @param {string} id
   * @param {() => Promise<string>} words
   */
  async fill(id, words) {
    const place = this.list.querySelector(`#${id}`);
    if (place) place.textContent = await words().catch(() => "Not stored");
  }

  async repair() {
    this.button.disabled = true;
    this.said.textContent = "Checking every file";
    try {
      await navigator.storage?.persist?.();
      const mended = await check((bytes) => this.showProgress(bytes));
      this.said.textContent = mended ? `Repaired: ${mended} missing or damaged files were fetched again` : "Checked: everything is whole";
    } catch (error) {
      this.said.textContent = `Not finished: ${error instanceof Error ? error.message : error}. Try again with a connection`;
    }
    this.progress.hidden = true;
    this.button.disabled = false;
    await this.look();
  }

  /** @param {{stored: number, wanted: number}} bytes */
  showProgress({ stored, wanted }) {
    this.progress.hidden = false;
    this.progress.max = wanted;
    this.progress.value = stored;
    this.said.textContent = `Storing the calculators: ${megabytes(stored)} of ${megabytes(wanted)}`;
  }
}

const place = document.getElementById("stored");
if (place) {
  const page = new StoredPage(place);
  void page.look();
  document.addEventListener("uh-stored", () => void page.look());
  document.addEventListener("uh-storing", (event) => {
    const { stage, words } = /** @type {CustomEvent<{stage: string, words: string}>} */ (event).detail;
    const value = document.getElementById(`stored-${stage}`);
    if (value) value.textContent = words;
  });
}
