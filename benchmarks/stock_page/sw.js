// Keeps every file of the reference page, so that it too can be measured without a network.
const STORE = "stock";

const storeAll = async () => {
  const files = await (await fetch("./files.json")).json();
  await (await caches.open(STORE)).addAll(files);
};

addEventListener("install", (event) => event.waitUntil(storeAll()));
addEventListener("activate", (event) => event.waitUntil(clients.claim()));
addEventListener("fetch", (event) => {
  const stored = caches.match(event.request, { ignoreSearch: true });
  event.respondWith(stored.then((response) => response ?? fetch(event.request)));
});
