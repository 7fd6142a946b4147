"""The browser is killed while it stores: what was proven counts, and what was there reads."""

from __future__ import annotations

import shutil
import sys
from threading import Event

import pytest
from killed_browser import KilledBrowser
from offline_hands import STORED, WAIT, WRONG, serve_instead, state, wait_for
from playwright.sync_api import expect

from underhoist.browser.precache import write_service_worker

pytestmark = [
    pytest.mark.browser,
    pytest.mark.skipif(sys.platform != "linux", reason="finds the browser's processes in /proc"),
]

PAGE = "kestrel-3/set-band/index.html"

KEPT = """async (kind) => {
    const store = await caches.open(`underhoist-${kind} ${location.origin}/`);
    const keys = await store.keys();
    return keys.map(({url}) => new URL(url).pathname + new URL(url).search);
}"""


@pytest.fixture(scope="session")
def site(lean_site):
    """Little to store."""
    return lean_site


@pytest.fixture
def phone(playwright, tmp_path):
    """A phone's browser that can be killed."""
    return KilledBrowser(playwright, tmp_path / "profile", service_workers="allow")


@pytest.fixture(scope="module")
def newer(site, tmp_path_factory):
    """The manual one word later, with a wheel at another address; nobody changes it."""
    folder = tmp_path_factory.mktemp("newer") / "site"
    shutil.copytree(site, folder)
    page = folder / PAGE
    text = page.read_text(encoding="utf-8")
    page.write_text(text.replace("</h1>", ", newer</h1>", 1), encoding="utf-8")
    wheel = sorted(folder.glob("runtime/wheel-*"))[0]
    wheel.rename(wheel.with_name("wheel-newer"))
    manifest = folder / "runtime" / "manifest.json"
    listed = manifest.read_text(encoding="utf-8").replace(f"{wheel.name}/", "wheel-newer/")
    manifest.write_text(listed, encoding="utf-8")
    write_service_worker(folder)
    return folder


def stop_at(phone, server, file, address=""):
    """Open a page, and kill the browser while this file is waited for; what was stored then."""
    server.held[file] = Event()
    _, page = phone.launch()
    page.goto(server.url + address)
    wait_for(page, lambda: any(path.endswith(file) for path in server.requests))
    settled(page)
    said = state(page).text_content()
    kept = {kind: page.evaluate(KEPT, kind) for kind in ("text", "runtime")}
    phone.kill()
    server.held.pop(file).set()
    server.requests.clear()
    return said, kept


def settled(page):
    """Wait until nothing more is being stored: all that is not held has arrived."""
    before = -1
    while (now := sum(len(page.evaluate(KEPT, kind)) for kind in ("text", "runtime"))) != before:
        before = now
        page.wait_for_timeout(500)


def largest_bundle(folder):
    """The file's name; it is the manual's pages."""
    return max(folder.glob("offline/bundles/*"), key=lambda file: file.stat().st_size).name


@pytest.mark.parametrize("cut", ["files.json", "bundle", "pyodide.asm.wasm.bin", "python.bin"])
def test_a_first_visit_goes_on_from_what_was_stored(phone, server, cut):
    file = largest_bundle(server.folder) if cut == "bundle" else cut
    said, kept = stop_at(phone, server, file)
    assert "Calculators offline" not in said
    assert ("Readable offline" in said) == (cut in ("pyodide.asm.wasm.bin", "python.bin"))

    server.held[file] = Event()
    _, page = phone.launch()
    page.goto(server.url)
    wait_for(page, lambda: any(path.endswith(file) for path in server.requests))
    settled(page)
    expect(state(page)).not_to_contain_text("Calculators offline")
    server.held.pop(file).set()
    expect(state(page)).to_have_text(STORED, timeout=WAIT)
    assert twice(server, file, kept) == []
    server.stop()
    page.reload()
    assert page.evaluate(WRONG) == []
    expect(state(page)).to_have_text(STORED, timeout=WAIT)
    phone.kill()


def twice(server, file, kept):
    """What was asked for though it was stored before the browser was killed."""
    runtime = [path for path in kept["runtime"] if "?piece" not in path]
    # What is kept unpacked came from an address of its own.
    again = [path for path in runtime if server.requests[path] or server.requests[f"{path}.bin"]]
    if kept["text"]:
        again += [path for path in server.requests if "/bundles/" in path and file not in path]
    return again


@pytest.fixture(scope="module")
def stored_once(playwright, tmp_path_factory, shop):
    """What a browser leaves that has stored the manual and was closed; its server is `shop`."""
    profile = tmp_path_factory.mktemp("stored") / "profile"
    context, page = KilledBrowser(playwright, profile, service_workers="allow").launch()
    page.goto(shop.url)
    expect(state(page)).to_have_text(STORED, timeout=WAIT)
    context.close()
    return profile


@pytest.mark.parametrize("cut", ["page", "wheel"])
def test_an_update_that_dies_leaves_the_old_manual_and_goes_on(
    phone, stored_once, shop, newer, cut
):
    server = shop
    shutil.copytree(stored_once, phone.profile)
    serve_instead(server, newer)
    wheel = next(newer.glob("runtime/wheel-newer/*")).name
    stop_at(phone, server, PAGE if cut == "page" else f"wheel-newer/{wheel}", "hazards/hot-fluid/")

    server.stop()
    _, page = phone.launch()
    page.goto(f"{server.url}kestrel-3/set-band/")
    expect(page.locator("h1")).not_to_contain_text("newer")
    expect(state(page)).to_have_text(STORED, timeout=WAIT)
    assert page.evaluate(WRONG) == []
    server.start()
    page.reload()
    take = page.locator(".uh-notice").get_by_role("button", name="Take it now")
    expect(take).to_be_visible(timeout=WAIT)
    server.stop()  # what is offered needs no connection any more
    asked = {path for path in server.requests if not path.startswith("/offline/parts/")}
    assert asked <= {"/sw.js", f"/{PAGE}", "/runtime/manifest.json", "/offline/lines.json",
                     f"/runtime/wheel-newer/{wheel}"}  # fmt: skip
    take.dispatch_event("click")  # it loads the page anew, and the browser dies before it has
    phone.kill()

    _, page = phone.launch()
    page.goto(f"{server.url}kestrel-3/set-band/")
    expect(page.locator("h1")).to_contain_text("newer")
    expect(state(page)).to_have_text(STORED, timeout=WAIT)
    assert page.evaluate(WRONG) == []
    phone.kill()


def test_half_a_file_goes_on_from_its_last_whole_piece(phone, server):
    server.held_after["python.bin"] = 2_600_000
    stop_at(phone, server, "python.bin")
    _, page = phone.launch()
    page.goto(server.url)
    expect(state(page)).to_have_text(STORED, timeout=WAIT)
    [wanted] = server.ranges
    assert 1_000_000 <= int(wanted.removeprefix("bytes=").removesuffix("-")) <= 2_600_000
    phone.kill()
