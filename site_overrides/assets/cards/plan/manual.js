// What the manual offers to cards, as the build wrote it beside this page.

import { FORMAT } from "../record/formats.js";

/** @import { Index, ProcedureText } from "../types.js" */

/** The manual could not be read; its message says what to do. */
export class ManualTrouble extends Error {}

/** Where the site begins, from whatever page this is. */
export function siteRoot() {
  const meta = document.querySelector('meta[name="uh-root"]');
  const root = meta?.getAttribute("content") || "..";
  return new URL(`${root}/`.replace(/\/+$/, "/"), document.baseURI);
}

/** What the links in a step's text count from. */
export function stepBase() {
  return new URL("cards/", siteRoot());
}

/**
 * Everything that a card can choose from.
 *
 * @returns {Promise<Index>}
 * @throws {ManualTrouble}
 */
export async function readIndex() {
  return /** @type {Promise<Index>} */ (readData("index", "The list of procedures"));
}

/**
 * One procedure as it stands today.
 *
 * @param {string} id
 * @returns {Promise<ProcedureText>}
 * @throws {ManualTrouble}
 */
export async function readProcedure(id) {
  return /** @type {Promise<ProcedureText>} */ (readData(id, `The procedure “${id}”`));
}

/**
 * @param {string} name
 * @param {string} what for the message
 * @returns {Promise<unknown>}
 */
async function readData(name, what) {
  const wait = `${what} is not on this phone yet. Go where there is a signal and open the manual once.`;
  const address = new URL(`cards/data/${encodeURIComponent(name)}.json`, siteRoot());
  const answer = await fetch(address).catch(() => null);
  if (!answer?.ok) throw new ManualTrouble(wait);
  const data = await answer.json().catch(() => null);
  if (data === null) throw new ManualTrouble(wait);
  if (data.format !== FORMAT) {
    throw new ManualTrouble(`${what} is of another version than this page. Reload this page.`);
  }
  return data;
}
