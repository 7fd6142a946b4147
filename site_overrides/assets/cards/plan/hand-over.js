// What a complaint's page hands over to a new card: the complaint, the family, the results so far.

import { RESULTS } from "../record/effects/fault.js";
import { remember, remembered } from "../record/store.js";
import { readFault } from "./manual.js";
import { checksOf } from "../fault/counted.js";

/** @import { App } from "../app.js" */
/** @import { Session } from "../record/session.js" */

/** @typedef {{fault: string, family: string, results: {check: string, result: string}[]}} HandOver */

/** What the phone remembers it under. */
const NAME = "fault hand-over";

/**
 * What was handed over for the complaint that the address names, or null.
 *
 * @returns {Promise<HandOver|null>}
 */
export async function handedOver() {
  const named = location.hash.split("/")[1] ?? "";
  if (named === "") return null;
  const kept = /** @type {any} */ (await remembered(NAME).catch(() => null));
  if (kept?.fault !== named || typeof kept.family !== "string" || !Array.isArray(kept.results)) return null;
  const results = kept.results.filter((/** @type {any} */ one) => typeof one?.check === "string" && RESULTS.includes(one.result));
  return { fault: named, family: kept.family, results };
}

/**
 * Stores the results on the card, each with the name that the manual gives its check. What cannot be
 * stored waits in the session, which says so; what was handed over is then forgotten.
 *
 * @param {App} app
 * @param {Session} session
 * @param {HandOver} handed
 */
export async function takeOver(app, session, { fault, family, results }) {
  const data = await readFault(fault).catch(() => null);
  const checks = checksOf(data?.by_family[family] ?? null);
  for (const { check, result } of results) {
    const { name = "", minutes = 0 } = checks.find(({ id }) => id === check) ?? {};
    const value = { fault, check, result, name, minutes };
    await session.record(`fault|${fault}|${check}`, { who: app.initials, kind: "result", value });
  }
  await remember(NAME, null).catch(() => {});
}
