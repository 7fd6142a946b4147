// Writes the service worker with workbox-build, and beside it the list of what it stores.
// Called as: node precache.mjs SITE NODE_MODULES LARGEST; prints {count, size, warnings}.
import { createHash } from "node:crypto";
import { readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";

const [site, modules, largest] = process.argv.slice(2);
const { generateSW, getManifest } = createRequire(join(modules, "/"))("workbox-build");

const LIST = "offline/files.json";

const files = {
  globDirectory: site,
  globPatterns: ["**/*"],
  // The runtime is the second stage (its list is part of the first). Maps and records serve no reader.
  globIgnores: ["runtime/*/*", "sw.js", "**/*.map", "sitemap.xml*", "changes/record.json", "changes/data/*"],
  maximumFileSizeToCacheInBytes: Number(largest),
  // The browser then refuses a page that arrives damaged, and the store stays whole.
  manifestTransforms: [(entries) => ({ manifest: entries.map(withIntegrity), warnings: [] })],
};

function withIntegrity(entry) {
  const hash = createHash("sha256").update(readFileSync(join(site, entry.url)));
  return { ...entry, integrity: `sha256-${hash.digest("base64")}` };
}

/** The list by which a page proves that everything is stored. It does not name itself. */
async function writeList() {
  const { manifestEntries, size } = await getManifest({ ...files, globIgnores: [...files.globIgnores, LIST] });
  const version = createHash("sha256").update(JSON.stringify(manifestEntries)).digest("hex").slice(0, 12);
  const urls = manifestEntries.map((entry) => entry.url);
  writeFileSync(join(site, LIST), `${JSON.stringify({ version, size, urls })}\n`);
}

// The functions below run inside the service worker: they are written into it as text.

const isRuntime = ({ url, sameOrigin }) => sameOrigin && /\/runtime\/[^/]+\/[^/]+$/.test(url.pathname);

const fromRuntimeStore = async ({ request, url }) => {
  const store = await caches.open(`underhoist-runtime ${self.registration.scope}`);
  return (await store.match(url.origin + url.pathname)) ?? fetch(request);
};

const isFolderWithoutSlash = ({ request, url, sameOrigin }) =>
  sameOrigin && request.mode === "navigate" && /\/[^/.]+$/.test(url.pathname);

const toFolder = async ({ url }) => Response.redirect(`${url.origin}${url.pathname}/${url.search}`, 302);

const isPage = ({ request, sameOrigin }) => sameOrigin && request.mode === "navigate";

const fromNetworkOrSayWhy = async ({ request }) => {
  try {
    return await fetch(request);
  } catch (error) {
    const missing = new URL("404.html", self.registration.scope);
    return (await caches.match(missing, { ignoreSearch: true })) ?? Promise.reject(error);
  }
};

await writeList();
const made = await generateSW({
  ...files,
  swDest: join(site, "sw.js"),
  cacheId: "underhoist",
  mode: "production",
  sourcemap: false,
  inlineWorkboxRuntime: true,
  clientsClaim: true,
  skipWaiting: false, // a new version waits for consent
  cleanupOutdatedCaches: true,
  directoryIndex: "index.html",
  ignoreURLParametersMatching: [/./],
  runtimeCaching: [
    { urlPattern: isRuntime, handler: fromRuntimeStore },
    { urlPattern: isFolderWithoutSlash, handler: toFolder },
    { urlPattern: isPage, handler: fromNetworkOrSayWhy },
  ],
});
console.log(JSON.stringify({ count: made.count, size: made.size, warnings: made.warnings }));
