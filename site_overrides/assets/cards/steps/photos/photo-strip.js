// The photos of a step or a finding, small, and those that are not stored yet.

import { el } from "../../kit/dom.js";
import { smallPhoto } from "../../kit/photo.js";
import { counted } from "../../record/left.js";
import { photoKey } from "./photo-button.js";

/** @import { App } from "../../app.js" */
/** @import { Session } from "../../record/session.js" */
/** @import { Photo } from "../../types.js" */
/** @import { Subject } from "./photo-button.js" */

/**
 * @param {App} app
 * @param {Session} session
 * @param {Photo[]} photos
 * @param {Subject} subject
 */
export function photoStrip(app, session, photos, subject) {
  const open = session.state?.closed === null;
  const key = photoKey(subject);
  const takeBack = (/** @type {Photo} */ photo) =>
    void session.record(key, { who: app.initials, kind: "undo", value: { of: photo.id } });
  const small = photos.map((photo) => el("li", {}, smallPhoto(photo, open ? takeBack : null)));
  const waiting = photosWaiting(session, subject);
  return [
    ...(small.length > 0 ? [el("ul", { class: "uh-photos", "aria-label": "Photos" }, ...small)] : []),
    ...(waiting > 0 ? [el("p", { class: "uh-card__said", role: "status" }, `${counted(waiting, "photo")} not stored yet.`)] : []),
  ];
}

/**
 * How many photos of this are on the way to the disk.
 *
 * @param {Session} session
 * @param {Subject} subject
 */
export function photosWaiting(session, subject) {
  const key = photoKey(subject);
  return [...session.waiting.values()].filter((one) => one.key === key && one.draft.kind === "photo").length;
}
