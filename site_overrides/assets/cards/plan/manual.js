// What the manual offers to cards, as the build wrote it beside this page.

import { FORMAT } from "../record/formats.js";

/** @import { FaultData } from "../../fault/types.js" */
/** @import { Index, ProcedureText } from "../types.js" */

/** The shape of a complaint's data as the build writes it today. */
const FAULT_FORMAT = 1;

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

/** Complaints that this page has read. @type {Map<string, FaultData>} */
const read = new Map();

/**
 * A complaint with its causes and checks as the manual has it today.
 *
 * @param {string} id
 * @returns {Promise<FaultData>}
 * @throws {ManualTrouble}
 */
export async function readFault(id) {
  const known = read.get(id);
  if (known) return known;
  const data = /** @type {FaultData} */ (await readData(id, "The complaint", "fault/data/", FAULT_FORMAT));
  read.set(id, data);
  return data;
}

/**
 * The same without waiting: null where it has not been read yet.
 *
 * @param {string} id
 */
export function knownFault(id) {
  return read.get(id) ?? null;
}

/**
 * @param {string} name
 * @param {string} what for the message
 * @param {string} [folder] below the site's root
 * @param {number} [format]
 * @returns {Promise<unknown>}
 */
async function readData(name, what, folder = "cards/data/", format = FORMAT) {
  const wait = `${what} is not on this phone yet. Go where there is a signal and open the manual once.`;
  const address = new URL(`${folder}${encodeURIComponent(name)}.json`, siteRoot());
  const answer = await fetch(address).catch(() => null);
  if (!answer?.ok) throw new ManualTrouble(wait);
  const data = await answer.json().catch(() => null);
  if (data === null) throw new ManualTrouble(wait);
  if (data.format !== format) {
    throw new ManualTrouble(`${what} is of another version than this page. Reload this page.`);
  }
  return data;
}
