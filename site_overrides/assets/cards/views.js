// The views of the cards' page by the word in their address, each brought in when it is first asked for.

/** @import { App, View } from "./app.js" */
/** @import { Session } from "./record/session.js" */
/** @import { CardState } from "./types.js" */

/** @typedef {(app: App, session: Session, card: CardState) => View|Promise<View>} CardView */

/** Those of one card. @type {Record<string, () => Promise<CardView>>} */
export const CARD_VIEWS = {
  add: async () => (await import("./plan/add-view.js")).addView,
  fault: async () => (await import("./fault/fault-view.js")).faultView,
  fetch: async () => (await import("./plan/fetch-view.js")).fetchView,
  findings: async () => (await import("./steps/findings/findings-view.js")).findingsView,
  questions: async () => (await import("./steps/questions-view.js")).questionsView,
  jobs: async () => (await import("./steps/jobs-view.js")).jobsView,
  vehicle: async () => (await import("./steps/vehicle-view.js")).vehicleView,
  newer: async () => (await import("./renew/renew-view.js")).renewView,
  share: async () => (await import("./share/share-view.js")).shareView,
  sheet: async () => (await import("./out/sheet-view.js")).sheetView,
  owner: async () => (await import("./out/owner-view.js")).ownerView,
  parts: async () => (await import("./out/parts-view.js")).partsView,
  close: async () => (await import("./out/close-view.js")).closeView,
};

/** Those of no card. @type {Record<string, () => Promise<(app: App) => View|Promise<View>>>} */
export const OWN_VIEWS = {
  new: async () => (await import("./plan/new-card-view.js")).newCardView,
  "take-in": async () => (await import("./share/take-in-view.js")).takeInView,
  sync: async () => {
    const { SyncView } = await import("./sync/sync-view.js");
    return () => new SyncView();
  },
};

/**
 * The work on a card, at a step of its position from 0, or at the first that is open.
 *
 * @param {number|null} at
 * @returns {Promise<CardView>}
 */
export async function workAt(at) {
  const { WorkView } = await brought(() => import("./steps/work-view.js"));
  return (app, session, card) => new WorkView(app, session, card, at);
}

/**
 * @template T
 * @param {() => Promise<T>} bring
 * @returns {Promise<T>}
 * @throws {Error} where it is not on this phone, saying what to do
 */
export async function brought(bring) {
  try {
    return await bring();
  } catch (cause) {
    const words = "This part of the page is not on this phone yet. Go where there is a signal and open it once.";
    throw new Error(words, { cause });
  }
}
