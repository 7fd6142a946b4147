// The button that takes a photo, and what becomes of it.

import { el } from "../../kit/dom.js";
import { PhotoTrouble, shrink } from "./shrink.js";

/** @import { App } from "../../app.js" */
/** @import { Session } from "../../record/session.js" */

/** What a photo shows: a step, or a finding wherever it was found.
 * @typedef {{job: string, step: number, finding: string}} Subject */

/**
 * @param {App} app
 * @param {Session} session
 * @param {Subject} subject
 * @param {{say: (words: string) => void, refuse: (words: string) => void}} tell
 * @param {string} [name] beyond "Photo", for who hears and does not see what it is of
 */
export function photoButton(app, session, subject, tell, name = "") {
  const chosen = async () => {
    const [file] = input.files ?? [];
    input.value = ""; // the same file can be chosen again
    if (file) await keepPhoto(app, session, subject, file, tell);
  };
  const input = el("input", {
    class: "uh-unseen",
    type: "file",
    accept: "image/*",
    capture: "environment",
    "aria-label": `Photo${name}`,
    onchange: () => void chosen(),
  });
  return el("label", { class: "uh-button uh-button--plain uh-photo__take" }, el("span", { "aria-hidden": "true" }, "Photo"), input);
}

/**
 * @param {App} app
 * @param {Session} session
 * @param {Subject} subject
 * @param {File} file
 * @param {{say: (words: string) => void, refuse: (words: string) => void}} tell
 */
async function keepPhoto(app, session, subject, file, tell) {
  tell.say("The photo is being made small.");
  try {
    const { picture, width, height, bytes, sha256 } = await shrink(file);
    const value = { ...subject, type: picture.type, width, height, bytes, sha256 };
    const key = photoKey(subject);
    const stored = await session.record(key, { who: app.initials, kind: "photo", value }, picture);
    if (stored) tell.say("Stored: the photo.");
  } catch (error) {
    tell.say("");
    tell.refuse(error instanceof PhotoTrouble ? error.message : `The photo could not be kept. ${String(error)}`);
  }
}

/** Under which a photo waits to be stored. @param {Subject} subject */
export function photoKey({ job, step, finding }) {
  return finding ? `photo|${finding}` : `photo|${job}|${step}`;
}
