/** Once a day everything stored is read again: what was damaged is fetched before it is wanted. */
import { keeper } from "./keeper.js";
import { ROOT } from "./site.js";
import { checkText } from "./text-store.js";

const KEY = `underhoist checked ${ROOT}`;
const DAY = 86_400_000; // ms

/** Checks, unless somebody has a card open: then the phone has better things to do. */
export async function dailyCheck() {
  const last = localStorage.getItem(KEY); // null: all of it was stored and proven just now
  if (last && Date.now() - Number(last) < DAY) return;
  if (document.documentElement.dataset.card === "open") return;
  localStorage.setItem(KEY, `${Date.now()}`);
  if (last) await check().catch(() => {}); // Without a connection: whoever opens what is damaged is told.
}

/**
 * Reads every stored file again and has what is damaged or gone fetched.
 * @param {(bytes: import("./runtime-store.js").Bytes) => void} [onProgress]
 * @returns {Promise<number>} how many files were mended
 */
export async function check(onProgress) {
  const text = await checkText();
  const dropped = await keeper("check");
  await keeper("store", onProgress);
  if (text?.missing) throw new Error(`${text.missing} files did not arrive`);
  return (text?.mended ?? 0) + dropped;
}
