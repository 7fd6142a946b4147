/** What the file holds besides its text: the search index, the complaints, what calculators run on. */
import { unpacked } from "./dense.js";

/** @typedef {import("./dense.js").Packed} Packed */

/**
 * Rejects with a reason in words where the part is not there whole.
 * @param {string} name
 * @returns {Promise<any>} what its JSON holds
 */
export async function read(name) {
  const place = document.getElementById(`part-${name}`);
  if (!place) throw new Error(`${name} is missing: this file was not copied whole`);
  return JSON.parse(await (await unpacked(packedIn(place))).text());
}

/** @returns {Packed[]} all that Python wants, as it stands in the file */
export function partsOfPython() {
  return [...document.querySelectorAll("script[data-type]")].map(packedIn);
}

/** @param {Element} place */
function packedIn(place) {
  const type = place.getAttribute("data-type") ?? "";
  return { name: place.id.replace("part-", ""), text: place.textContent ?? "", type };
}
