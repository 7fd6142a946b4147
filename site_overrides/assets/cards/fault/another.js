// One more complaint of the manual for a card, or its first.

import { isFor } from "../plan/order.js";
import { el } from "../kit/dom.js";

/** @import { App } from "../app.js" */
/** @import { Session } from "../record/session.js" */
/** @import { CardState, Index } from "../types.js" */

/**
 * Null where the manual has no other for the vehicle.
 *
 * @param {App} app
 * @param {Session} session
 * @param {CardState} card
 * @param {Index|null} index
 */
export function anotherComplaint(app, session, card, index) {
  const others = (index?.faults ?? []).filter((one) => isFor(one, card.vehicle.family) && !card.faults.has(one.id));
  if (others.length === 0) return null;
  const options = others.map(({ id, complaint }) => el("option", { value: id }, complaint));
  const select = el("select", { id: "uh-complaint" }, ...options);
  const take = async () => {
    const chosen = others.find(({ id }) => id === select.value);
    if (!chosen || session.waitingFor("complaint")) return;
    const value = { fault: chosen.id, complaint: chosen.complaint };
    const stored = await session.record("complaint", { who: app.initials, kind: "complaint", value });
    if (stored) app.go(`#card/${card.id}/fault/${chosen.id}`);
  };
  const press = { class: "uh-button", type: "button", onclick: () => void take() };
  const words = card.faults.size > 0 ? "Another complaint" : "Choose a complaint";
  return el(
    "details",
    { class: "uh-more" },
    el("summary", {}, words),
    el("div", { class: "uh-field" }, el("label", { for: "uh-complaint" }, "What the owner says"), select),
    el("p", {}, el("button", press, "Look for its cause")),
  );
}
