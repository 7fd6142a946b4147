// Choosing procedures for a card; what the complaint proposes comes first and is chosen already.

import { cardName, notice } from "../app.js";
import { el } from "../kit/dom.js";
import { readIndex, readProcedure } from "./manual.js";
import { inWorkingOrder, offered } from "./order.js";

/** @import { App, View } from "../app.js" */
/** @import { Happening } from "../record/events.js" */
/** @import { Session } from "../record/session.js" */
/** @import { CardState, ProcedureEntry } from "../types.js" */

/**
 * @param {App} app
 * @param {Session} session
 * @param {CardState} card
 * @returns {Promise<View>}
 */
export async function addView(app, session, card) {
  const index = await readIndex();
  const fault = index.faults.find((one) => one.id === card.fault);
  const { checks, mends, others } = offered(index, card.vehicle.family, fault);
  const titles = new Map(index.procedures.map(({ id, title }) => [id, title]));
  const taken = new Set(card.jobs.map((job) => job.text.id));
  /** @param {string} title @param {ProcedureEntry[]} entries @param {boolean} chosen */
  const group = (title, entries, chosen) => {
    const lines = entries.map((entry) => choice(entry, taken, chosen && taken.size === 0, titles));
    return lines.length > 0
      ? [el("h3", {}, title), el("ul", { class: "uh-card__choices" }, ...lines)]
      : [];
  };
  const trouble = el("div");
  const add = el("button", { class: "uh-button", type: "submit" }, "Add to the card");
  const form = el(
    "form",
    { class: "uh-card__form" },
    fault ? el("p", {}, `For “${fault.complaint}”`) : null,
    ...group("Find the cause first", checks, true),
    ...group("What mends it, once it is found", mends, false),
    ...group(fault ? "Other procedures" : "Procedures", others, false),
    trouble,
    el("p", {}, add),
    el("p", {}, el("a", { href: `#card/${card.id}` }, "Back to the card")),
  );
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    const ids = new Set(new FormData(form).getAll("procedure"));
    const chosen = [...checks, ...mends, ...others].filter(({ id }) => ids.has(id));
    add.disabled = true;
    void addAll(app, session, chosen)
      .catch((error) => trouble.replaceChildren(notice(error.message)))
      .finally(() => (add.disabled = false));
  });
  const heading = el("h2", { tabindex: -1 }, "Add procedures");
  return { node: el("div", {}, heading, el("p", {}, cardName(card)), form) };
}

/**
 * @param {ProcedureEntry} entry
 * @param {Set<string>} taken ids of what is on the card
 * @param {boolean} chosen
 * @param {Map<string, string>} titles
 */
function choice(entry, taken, chosen, titles) {
  const first = entry.before.filter((id) => !taken.has(id)).map((id) => titles.get(id) ?? id);
  const facts = [
    `${entry.minutes} minutes`,
    first.length > 0 && `comes after: ${first.join("; ")}`,
    taken.has(entry.id) && "on the card already",
  ].filter(Boolean);
  const words = el("span", {}, entry.title, el("br"), el("small", {}, facts.join(" · ")));
  const checked = chosen && !taken.has(entry.id);
  const box = el("input", { type: "checkbox", name: "procedure", value: entry.id, checked });
  return el("li", {}, el("label", {}, box, words));
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
    /** @type {Happening} */
    const what = { who: app.initials, kind: "add", value: { procedure }, revision };
    if (!(await session.record("card", what))) break;
  }
  app.go(session.trouble ? `#card/${session.card}` : `#card/${session.card}/fetch`);
}
