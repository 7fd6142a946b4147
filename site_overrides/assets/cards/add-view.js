// Choosing procedures for a card; what the complaint proposes comes first and is chosen already.

import { cardName, notice } from "./app.js";
import { el } from "./dom.js";
import { readIndex, readProcedure } from "./manual.js";
import { inWorkingOrder, offered } from "./order.js";

/** @import { App, View } from "./app.js" */
/** @import { Session } from "./session.js" */
/** @import { CardState, ProcedureEntry } from "./types.js" */

/**
 * @param {App} app
 * @param {Session} session
 * @param {CardState} card
 * @returns {Promise<View>}
 */
export async function addView(app, session, card) {
  const index = await readIndex();
  const fault = index.faults.find((one) => one.id === card.fault);
  const { proposed, others } = offered(index, card.vehicle.family, fault);
  const taken = new Set(card.jobs.map((job) => job.text.id));
  const trouble = el("div");
  const add = el("button", { class: "uh-button", type: "submit" }, "Add to the card");
  const form = el(
    "form",
    { class: "uh-card__form" },
    ...choices(fault ? `For “${fault.complaint}”` : "", proposed, taken, taken.size === 0),
    ...choices(proposed.length > 0 ? "Other procedures" : "", others, taken, false),
    trouble,
    el("p", {}, add),
    el("p", {}, el("a", { href: `#card/${card.id}` }, "Back to the card")),
  );
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    const ids = new Set(new FormData(form).getAll("procedure"));
    const chosen = [...proposed, ...others].filter(({ id }) => ids.has(id));
    add.disabled = true;
    void addAll(app, session, chosen)
      .catch((error) => trouble.replaceChildren(notice(error.message)))
      .finally(() => (add.disabled = false));
  });
  const heading = el("h2", { tabindex: -1 }, "Add procedures");
  return { node: el("div", {}, heading, el("p", {}, cardName(card)), form) };
}

/**
 * @param {string} title "" for none
 * @param {ProcedureEntry[]} entries
 * @param {Set<string>} taken
 * @param {boolean} chosen
 */
function choices(title, entries, taken, chosen) {
  if (entries.length === 0) return [];
  const lines = entries.map((entry) => choice(entry, taken.has(entry.id), chosen));
  const list = el("ul", { class: "uh-card__choices" }, ...lines);
  return title ? [el("h3", {}, title), list] : [list];
}

/**
 * @param {ProcedureEntry} entry
 * @param {boolean} taken
 * @param {boolean} chosen
 */
function choice(entry, taken, chosen) {
  const value = { name: "procedure", value: entry.id, checked: chosen && !taken };
  const already = taken ? " · on the card already" : "";
  return el(
    "li",
    {},
    el(
      "label",
      {},
      el("input", { type: "checkbox", ...value }),
      el("span", {}, `${entry.title}, ${entry.minutes} minutes${already}`),
    ),
  );
}

/**
 * Reads every text before it stores any, so that a card does not get half of what was chosen.
 *
 * @param {App} app
 * @param {Session} session
 * @param {ProcedureEntry[]} chosen
 */
async function addAll(app, session, chosen) {
  if (chosen.length === 0) throw new Error("Nothing is chosen. Tick at least one procedure.");
  const texts = await Promise.all(inWorkingOrder(chosen).map(({ id }) => readProcedure(id)));
  for (const procedure of texts) {
    const { revision } = procedure;
    const what = { who: app.initials, kind: /** @type {const} */ ("add"), value: { procedure }, revision };
    if (!(await session.record("card", what))) break;
  }
  app.go(session.trouble ? `#card/${session.card}` : `#card/${session.card}/fetch`);
}
