/** What the calculators of a newer version run on. */
import { alone, fetchInto, missingFiles } from "../../../../site_overrides/assets/phone/runtime-files.js";
import { bundlesOf } from "./list.js";
import { stored } from "./store.js";

/** @typedef {import("./list.js").Bundle} Bundle */
/** @typedef {import("../../../../site_overrides/assets/phone/site.js").RuntimeManifest} RuntimeManifest */

const MANIFEST = "runtime/manifest.json";

/**
 * Where a version that is stored has its calculators, a newer one has its own before it is whole: a
 * browser that was closed starts what waits without asking, and perhaps without a connection.
 * @param {Bundle[]} bundles of the newer version
 * @param {ArrayBuffer[]} older lists
 */
export async function storeRuntimeOf(bundles, older) {
  const wanted = await runtimeOf(bundles);
  const before = await Promise.all(older.map((list) => runtimeOf(bundlesOf(list))));
  if (!wanted || !before.length) return;
  await alone(async (store) => {
    const missing = await Promise.all(before.map((files) => files && missingFiles(store, files)));
    if (!missing.some((files) => files?.length === 0)) return;
    for (const file of await missingFiles(store, wanted)) await fetchInto(store, file, () => {});
  });
}

/**
 * @param {Bundle[]} bundles
 * @returns {Promise<RuntimeManifest["files"] | null>} null where its list is not stored
 */
async function runtimeOf(bundles) {
  const manifest = bundles.flatMap(({ files }) => files).find(([path]) => path === MANIFEST);
  const bytes = manifest && (await stored(MANIFEST, manifest[2]));
  return bytes ? JSON.parse(new TextDecoder().decode(bytes)).files : null;
}
