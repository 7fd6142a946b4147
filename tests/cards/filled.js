// A card with steps of one's own, for what comes out of it.

import { foldCard } from "../../site_overrides/assets/cards/record/fold.js";
import { PROCEDURE, TURNS, VEHICLE, startedPhone } from "./helpers.js";

export const litres = (id, fluid) => ({ ...TURNS, id, name: `Litres ${id}`, unit: "L", unit_words: "litres", fluid, low: null, high: null, limits_text: "" });

const TODAY = { takes_off: [], puts_back: [] };

/** A phone whose card holds the small procedure and one with these steps (and more about it). */
export async function cardWith(steps, more = {}) {
  const { phone } = await startedPhone();
  const numbered = steps.map((own, at) => ({ ...PROCEDURE.steps[0], number: at + 1, text: `Do ${at + 1}.`, ...TODAY, ...own }));
  const procedure = { ...PROCEDURE, format: 2, id: "pan", title: "Take the pan off", steps: numbered, ...more };
  const job = (await phone.does("RB", "add", { procedure })).id;
  const tick = (number) => phone.does("RB", "tick", { job, step: number });
  const leave = (number, reason) => phone.does("RB", "not-needed", { job, step: number, reason });
  const read = (number, reading, written, reason = "", when = "as found") =>
    phone.does("RB", "reading", { job, step: number, reading, when, written, reason });
  const find = async (what, urgency, decision = "", note = "") => {
    const { id } = await phone.does("RB", "finding", { job, step: 1, what, urgency });
    if (decision) await phone.does("SL", "decide", { of: id, decision, note });
    return id;
  };
  const marks = (between_marks) => phone.does("RB", "vehicle", { vehicle: { ...VEHICLE, between_marks } });
  return { phone, job, tick, leave, read, find, marks, card: () => foldCard(phone.seen) };
}
