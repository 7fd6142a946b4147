"""What tests of the offline store do and look for."""

from __future__ import annotations

from playwright.sync_api import expect

STORED = "Readable offline. Calculators offline"
WAIT = 90_000
"""Longest wait, in ms, for storing or for Python on a busy machine."""

SPOIL = """async ([kind, ending]) => {
    const names = await caches.keys();
    const store = await caches.open(names.find(name => name.includes(`-${kind} `)));
    const isMeant = ({url}) => url.split("?")[0].endsWith(ending);
    const request = (await store.keys()).find(isMeant);
    const {headers} = await store.match(request);
    await store.put(request, new Response("not what it was", {headers}));
}"""

DROP_COPY = """async () => {
    const place = await navigator.storage.getDirectory();
    for await (const name of place.keys()) await place.removeEntry(name, {recursive: true});
}"""

WRONG = """async () => {
    const root = `${location.origin}/`;
    const hash = async (bytes) => {
        const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
        return Array.from(digest, (byte) => byte.toString(16).padStart(2, "0")).join("");
    };
    const isOther = async (url, sha) => {
        const arrived = await fetch(root + url);
        return !arrived.ok || !(await hash(await arrived.arrayBuffer())).startsWith(sha);
    };
    const {bundles} = await (await fetch(`${root}offline/files.json`)).json();
    const runtime = await (await fetch(`${root}runtime/manifest.json`)).json();
    const listed = [
        ...bundles.flatMap(({files}) => files).map(([path, , sha]) => [path, sha]),
        ...runtime.files.map(({url, sha256, stored_url, stored_sha256}) =>
            [stored_url ?? url, stored_sha256 ?? sha256]),
    ];
    const found = await Promise.all(listed.map(([path, sha]) => isOther(path, sha)));
    return listed.filter((_, index) => found[index]).map(([path]) => path);
}"""
"""Files that do not come from the store as this version's lists have them."""


def state(page):
    """The line in the header that says what is stored."""
    return page.locator("#offline-state")


def store_all(page, server):
    """First visit: wait until both stages are stored."""
    page.goto(server.url)
    expect(state(page)).to_have_text(STORED, timeout=WAIT)


def spoil(page, kind, ending):
    """Write something else over a stored file of `text` or `runtime` whose address ends so.

    What would help is taken away: the browser's own cache, and the copy from which Python begins.
    """
    page.context.new_cdp_session(page).send("Network.clearBrowserCache")
    page.evaluate(SPOIL, [kind, ending])
    if kind == "runtime":
        page.evaluate(DROP_COPY)


def serve_instead(server, folder):
    """Serve another folder at the same address, and count anew."""
    server.stop()
    server.folder, server.is_replaced = folder, True
    server.start()
    server.requests.clear()


def wait_for(page, is_so):
    """Wait until something that happens out of the page's sight has happened."""
    for _ in range(WAIT // 100):
        if is_so():
            return
        page.wait_for_timeout(100)
    msg = "It did not happen."
    raise AssertionError(msg)
