// What this phone has and the server does not, as far as is known.

import { photoDocId } from "./documents.js";

/** @import { Around } from "./exchange.js" */

/**
 * Ids of the documents that this phone has and the server is not known to have.
 *
 * @param {Pick<Around, "records"|"notes">} around
 * @returns {Promise<{events: string[], photos: string[]}>}
 */
export async function waiting({ records, notes }) {
  const [events, photos, known] = await Promise.all([records.eventIds(), records.photoIds(), notes.known()]);
  return {
    events: events.filter((id) => !known.has(id)),
    photos: photos.filter((id) => !known.has(photoDocId(id))),
  };
}
