// Procedures onto a card, each in its place in the one order of the work.

import { placesFor } from "./choose.js";
import { readProcedure } from "./manual.js";

/** @import { App } from "../app.js" */
/** @import { Session } from "../record/session.js" */
/** @import { CardState, Index, ProcedureEntry } from "../types.js" */

/**
 * Reads every text before it stores any, so that a card does not get half of what was chosen.
 *
 * @param {App} app
 * @param {Session} session
 * @param {CardState} card
 * @param {Index} index
 * @param {ProcedureEntry[]} list in the order of the work
 * @returns {Promise<boolean>} whether all of it is stored; the session tells the trouble
 * @throws {import("./manual.js").ManualTrouble}
 */
export async function addToCard(app, session, card, index, list) {
  const places = placesFor(card.jobs, list, index);
  const texts = await Promise.all(list.map(({ id }) => readProcedure(id)));
  for (const [at, procedure] of texts.entries()) {
    const value = { procedure, place: places[at] };
    const what = { who: app.initials, kind: /** @type {const} */ ("add"), value, revision: procedure.revision };
    if (!(await session.record("card", what))) return false;
  }
  return true;
}
