// Events and pictures as the documents of a database, and back to what they were.
//
// An event is a document of its own: its _id is the event's id. A picture follows as a second document,
// `photo:<id of its event>`, with the picture as an attachment: the feed of changes then names it
// without carrying it, so that each is fetched by itself and an interrupted exchange goes on after it.

import { toText } from "../share/pictures.js";

/** @import { CardEvent, Picture } from "../types.js" */

/** @typedef {{_id: string} & Record<string, unknown>} Doc */

const PHOTO = "photo:";

/** The one attachment of a photo's document. */
export const PICTURE = "picture";

/**
 * @param {CardEvent} event
 * @returns {Doc}
 */
export function eventDoc(event) {
  return { _id: event.id, ...event };
}

/**
 * The event of a document, without what the database adds. It may be anything: check it.
 *
 * @param {Record<string, unknown>} doc
 */
export function withoutMarks({ _id, _rev, ...body }) {
  return { id: String(_id), body };
}

/** @param {string} event id of a photo's event */
export function photoDocId(event) {
  return `${PHOTO}${event}`;
}

/**
 * The event that a photo's document belongs to, or null where the id is none of a photo.
 *
 * @param {string} id
 */
export function eventOfPhoto(id) {
  return id.startsWith(PHOTO) ? id.slice(PHOTO.length) : null;
}

/**
 * @param {string} event
 * @param {Picture} picture
 * @returns {Doc}
 */
export function photoDoc(event, { type, content }) {
  const attachment = { content_type: type, data: toText(content) };
  return { _id: photoDocId(event), _attachments: { [PICTURE]: attachment } };
}

/**
 * Documents in batches that hold at most so many, and so many characters unless one alone has more.
 *
 * @template T
 * @param {T[]} docs
 * @param {{most: number, size: number}} bounds
 * @returns {T[][]}
 */
export function inBatches(docs, { most, size }) {
  /** @type {T[][]} */
  const batches = [];
  let held = Infinity;
  for (const doc of docs) {
    const own = JSON.stringify(doc).length;
    const last = batches.at(-1);
    if (last && last.length < most && held + own <= size) {
      last.push(doc);
      held += own;
    } else {
      batches.push([doc]);
      held = own;
    }
  }
  return batches;
}
