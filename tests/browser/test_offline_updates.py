"""From one build to the next: only what changed, never into a card, and never half."""

from __future__ import annotations

import shutil
from threading import Event

import pytest
from offline_hands import STORED, WAIT, WRONG, serve_instead, state, store_all, wait_for
from playwright.sync_api import expect

from underhoist.browser.precache import write_service_worker

pytestmark = pytest.mark.browser

LARGE = "drafting/manual.json"

FORGETFUL = """
    const post = ServiceWorker.prototype.postMessage;
    ServiceWorker.prototype.postMessage = function (asked, ...rest) {
        const isForgotten = asked.type === "SKIP_WAITING" && !sessionStorage.isLoadedAgain;
        if (!isForgotten) post.call(this, asked, ...rest);
    };
"""
"""A browser that forgets that a new version is to be taken, until the page is loaded again."""

GIVEN_UP = """async () => {
    const registration = await navigator.serviceWorker.getRegistration();
    return !registration.installing && !registration.waiting;
}"""

COPIES = """async () => {
    const store = await caches.open(`underhoist-text ${location.origin}/`);
    return (await store.keys()).filter(({url}) => url.includes("/set-band/index.html")).length;
}"""


@pytest.fixture(scope="session")
def site(lean_site):
    """Little to store."""
    return lean_site


@pytest.fixture(scope="module")
def made_newer(site, tmp_path_factory):
    """The same manual one word later, in a page and in the one large file of all pages."""
    folder = tmp_path_factory.mktemp("newer") / "site"
    shutil.copytree(site, folder)
    page = folder / "kestrel-3" / "set-band" / "index.html"
    text = page.read_text(encoding="utf-8")
    page.write_text(text.replace("</h1>", ", newer</h1>", 1), encoding="utf-8")
    large = folder / LARGE
    large.write_bytes(large.read_bytes().replace(b"clearance", b"newer clearance", 1))
    write_service_worker(folder)
    return folder


@pytest.fixture
def newer(made_newer, tmp_path):
    """That one, for a test that may change it."""
    return shutil.copytree(made_newer, tmp_path / "newer")


def test_a_new_version_waits_for_consent_and_fetches_only_what_changed(phone, server, newer):
    page = phone.new_page()
    store_all(page, server)
    serve_instead(server, newer)
    page.goto(f"{server.url}kestrel-3/set-band/")
    notice = page.locator(".uh-notice")
    expect(notice).to_contain_text("A new version of this manual is stored and ready.")
    page.reload()
    expect(page.locator("h1")).not_to_contain_text("newer")
    notice.get_by_role("button", name="Take it now").click()
    expect(page.locator("h1")).to_contain_text("newer")
    parts = [path for path in server.requests if path.startswith("/offline/parts/")]
    assert set(server.requests) - set(parts) == {
        "/sw.js", "/kestrel-3/set-band/index.html", "/offline/lines.json",
    }  # fmt: skip
    assert 3 <= len(parts) <= 6, "the list's first line, two bundles' lines, one part of the file"
    assert page.evaluate(f"fetch('/{LARGE}').then((answer) => answer.text())") == (
        newer / LARGE
    ).read_text(encoding="utf-8")
    expect(state(page)).to_have_text(STORED, timeout=WAIT)


def test_a_new_version_never_interrupts_a_card(phone, server, newer):
    page = phone.new_page()
    store_all(page, server)
    serve_instead(server, newer)
    page.goto(f"{server.url}kestrel-3/set-band/")
    page.evaluate("document.documentElement.dataset.cardUnstored = ''")
    notice = page.locator(".uh-notice")
    notice.get_by_role("button", name="Take it now").click()
    expect(notice).to_contain_text("A card step is not stored yet.")
    expect(page.locator("h1")).not_to_contain_text("newer")
    page.evaluate("document.documentElement.dataset.card = 'open'")
    expect(notice).to_be_hidden()
    page.evaluate("delete document.documentElement.dataset.card")
    expect(notice).to_be_visible()


def test_where_the_browser_forgets_what_was_asked_the_page_is_loaded_but_not_over_a_card(
    phone, server, newer
):
    page = phone.new_page()
    store_all(page, server)
    serve_instead(server, newer)
    page.add_init_script(FORGETFUL)
    page.clock.install()
    page.goto(f"{server.url}kestrel-3/set-band/")
    take = page.locator(".uh-notice").get_by_role("button", name="Take it now")
    take.click()
    page.evaluate("document.documentElement.dataset.cardUnstored = ''")
    page.clock.fast_forward(3000)
    assert page.evaluate("delete document.documentElement.dataset.cardUnstored"), "still there"
    take.click()
    page.evaluate("sessionStorage.isLoadedAgain = 'yes'")
    with page.expect_navigation():
        page.clock.fast_forward(3000)
    take.click()
    expect(page.locator("h1")).to_contain_text("newer")


def test_a_half_uploaded_version_leaves_the_old_one_and_is_taken_once_it_is_whole(
    phone, server, newer
):
    page = phone.new_page()
    store_all(page, server)
    changed = newer / "kestrel-3" / "set-band" / "index.html"
    whole = changed.read_bytes()
    changed.write_bytes(whole[:-100])
    serve_instead(server, newer)
    page.goto(f"{server.url}kestrel-3/set-band/")
    expect(state(page)).to_have_text(STORED, timeout=WAIT)
    wait_for(page, lambda: server.requests["/kestrel-3/set-band/index.html"])
    wait_for(page, lambda: page.evaluate(GIVEN_UP))
    expect(page.locator(".uh-notice")).to_have_count(0)
    server.stop()
    page.reload()
    expect(page.locator("h1")).not_to_contain_text("newer")
    expect(state(page)).to_have_text(STORED, timeout=WAIT)
    changed.write_bytes(whole)
    server.start()
    page.reload()
    page.locator(".uh-notice").get_by_role("button", name="Take it now").click()
    expect(page.locator("h1")).to_contain_text("newer")


def test_a_version_left_half_way_leaves_the_calculators_as_they_were(phone, server, newer):
    """What it would have run on is nowhere to be had."""
    page = phone.new_page()
    store_all(page, server)
    manifest = newer / "runtime" / "manifest.json"
    text = manifest.read_text(encoding="utf-8")
    manifest.write_text(text.replace("/wheel-", "/gone-"), encoding="utf-8")
    write_service_worker(newer)
    serve_instead(server, newer)
    page.goto(f"{server.url}kestrel-3/set-band/")
    wait_for(page, lambda: any("/gone-" in path for path in server.requests))
    wait_for(page, lambda: page.evaluate(GIVEN_UP))
    page.reload()
    expect(state(page)).to_have_text(STORED, timeout=WAIT)
    expect(page.locator(".uh-notice")).to_have_count(0)
    expect(page.locator("h1")).not_to_contain_text("newer")


def test_what_is_taken_while_a_still_newer_one_is_stored_takes_nothing_from_that(
    phone, server, newer, tmp_path
):
    page = phone.new_page()
    store_all(page, server)
    serve_instead(server, newer)
    page.goto(f"{server.url}kestrel-3/set-band/")
    take = page.locator(".uh-notice").get_by_role("button", name="Take it now")
    expect(take).to_be_visible(timeout=WAIT)

    newest = tmp_path / "newest"
    shutil.copytree(newer, newest)
    for path in ("kestrel-3/set-band/index.html", "hazards/hot-fluid/index.html"):
        text = (newest / path).read_text(encoding="utf-8")
        (newest / path).write_text(text.replace("</h1>", ", newest</h1>", 1), encoding="utf-8")
    write_service_worker(newest)
    server.held["hot-fluid/index.html"] = Event()
    serve_instead(server, newest)
    page.evaluate("() => void navigator.serviceWorker.getRegistration().then((it) => it.update())")
    wait_for(page, lambda: page.evaluate(COPIES) == 3)
    take.click()
    expect(page.locator("h1")).to_contain_text("newer")
    wait_for(page, lambda: page.evaluate(COPIES) == 2)
    server.held.pop("hot-fluid/index.html").set()
    take.click()
    expect(page.locator("h1")).to_contain_text("newest")
    server.stop()
    assert page.evaluate(WRONG) == []


def test_a_phone_without_room_says_so_and_reads_what_it_has(phone, server, newer):
    page = phone.new_page()
    protocol = phone.new_cdp_session(page)
    room(protocol, server, 1_000_000)
    page.goto(server.url)
    expect(state(page)).to_have_text("Not stored: no room on this phone", timeout=WAIT)
    room(protocol, server, None)
    page.evaluate("dispatchEvent(new Event('online'))")
    expect(state(page)).to_have_text(STORED, timeout=WAIT)
    used = page.evaluate("navigator.storage.estimate().then(({usage}) => usage)")
    room(protocol, server, used + 1000)
    serve_instead(server, newer)
    page.goto(f"{server.url}kestrel-3/set-band/")
    left = f"{STORED}. A newer version was not stored: no room on this phone"
    expect(state(page)).to_have_text(left, timeout=WAIT)
    server.stop()
    page.reload()
    expect(page.locator("h1")).not_to_contain_text("newer")
    expect(state(page)).to_contain_text(STORED, timeout=WAIT)


def room(protocol, server, size):
    """Let the browser give this address so many bytes; None gives it what is usual."""
    quota = {} if size is None else {"quotaSize": size}
    protocol.send("Storage.overrideQuotaForOrigin", {"origin": server.url[:-1], **quota})
