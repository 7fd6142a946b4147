"""The manual without a network, proven from the server's side: it is stopped, or it counts."""

from __future__ import annotations

import json
import re
import shutil

import pytest
from playwright.sync_api import expect
from static_server import StaticServer
from underhoist_calculators import all_calculators, door

from underhoist.browser import tools
from underhoist.browser.precache import write_service_worker

pytestmark = pytest.mark.browser

STORED = "Readable offline. Calculators offline"
WAIT = 90_000
"""Longest wait, in ms, for storing or for Python on a busy machine."""

KINDS = {
    "front page": "",
    "unit family": "families/kestrel-3/",
    "procedure": "kestrel-3/set-band/",
    "fault": "faults/late-shifts/",
    "tool": "tools/inch-pound-wrench/",
    "hazard": "hazards/raised-vehicle/",
    "torque": "torques/kestrel-3/band-seat/",
    "calculators": "calculators/",
    "job cards": "cards/",
    "offline": "offline/",
}


def addresses(server, site):
    """Every page of the site."""
    folders = (path.parent.relative_to(site).as_posix() for path in site.rglob("index.html"))
    found = sorted(server.url + ("" if each == "." else f"{each}/") for each in folders)
    assert len(found) > 50, "too few pages to prove anything"
    return found


def state(page):
    return page.locator("#offline-state")


def store_all(page, server):
    """First visit: wait until both stages are stored."""
    page.goto(server.url)
    expect(state(page)).to_have_text(STORED, timeout=WAIT)


def test_every_page_is_there_when_the_server_is_gone(phone, server, site):
    page = phone.new_page()
    store_all(page, server)
    server.stop()
    missing = page.evaluate(
        """async (urls) => {
            const isThere = (url) => fetch(url).then((answer) => answer.ok, () => false);
            const there = await Promise.all(urls.map(isThere));
            return urls.filter((_, index) => !there[index]);
        }""",
        addresses(server, site),
    )
    assert missing == []


def test_every_kind_of_page_opens_and_reloads_without_a_server(phone, server):
    page = phone.new_page()
    store_all(page, server)
    titles = {kind: title_at(page, server.url + path) for kind, path in KINDS.items()}
    server.stop()
    for kind, path in KINDS.items():
        page.goto(server.url + path)
        page.reload()
        assert page.title() == titles[kind], kind
        expect(state(page)).to_have_text(STORED, timeout=WAIT)


def title_at(page, url):
    answer = page.goto(url)
    assert answer.status == 200, url
    return page.title()


def test_a_question_mark_and_a_missing_slash_find_their_page_without_a_server(phone, server):
    page = phone.new_page()
    store_all(page, server)
    server.stop()
    for address in ("kestrel-3/set-band?from=card", "kestrel-3/set-band/?from=card"):
        page.goto(server.url + address)
        assert page.url == f"{server.url}kestrel-3/set-band/?from=card"
        expect(page.locator("h1")).to_contain_text("band")


def test_the_search_finds_by_any_word_without_a_server(phone, server):
    page = phone.new_page()
    store_all(page, server)
    server.stop()
    page.goto(f"{server.url}search.html?q=bushing")
    expect(page.locator("#understood")).to_have_text("bushing: we say bush.", timeout=WAIT)
    expect(page.locator("#results li").first).to_be_visible()


def test_an_address_that_does_not_exist_says_so_without_a_server(phone, server, site):
    page = phone.new_page()
    store_all(page, server)
    server.stop()
    page.goto(f"{server.url}kestrel-3/no-such-page/")
    expected = page.evaluate(
        "html => new DOMParser().parseFromString(html, 'text/html').title",
        (site / "404.html").read_text(encoding="utf-8"),
    )
    assert expected
    assert page.title() == expected


def test_every_calculator_answers_without_a_server(phone, server):
    page = phone.new_page()
    store_all(page, server)
    server.stop()
    for calculator in all_calculators():
        page.goto(f"{server.url}calculators/{calculator.name}/")
        page.wait_for_selector("#calculator[data-answered='yes']", timeout=WAIT)
        summary = door.run(calculator.name, door.example(calculator.name))["answer"]["summary"]
        expect(page.locator(".uh-answer__summary")).to_have_text(summary)


def test_nothing_comes_from_another_origin_on_any_page(phone, server, site):
    page = phone.new_page()
    asked = []
    phone.on("request", lambda request: asked.append(request.url))
    store_all(page, server)
    for address in addresses(server, site):
        page.goto(address)
    page.goto(f"{server.url}calculators/torque-units/?torque=9+lbf*ft")
    page.wait_for_selector("#calculator[data-answered]", timeout=WAIT)
    ours = (server.url, "blob:", "data:")
    assert len(asked) > 100
    assert [url for url in asked if not url.startswith(ours)] == []


def test_once_stored_only_the_service_worker_is_looked_for_again(phone, server):
    page = phone.new_page()
    store_all(page, server)
    server.requests.clear()
    for path in KINDS.values():
        page.goto(server.url + path)
    page.goto(f"{server.url}calculators/torque-units/")
    page.wait_for_selector("#calculator[data-answered]", timeout=WAIT)
    assert set(server.requests) <= {"/sw.js"}


def test_a_broken_connection_costs_only_the_last_piece(phone, server):
    page = phone.new_page()
    server.cut_once["pyodide.asm.wasm"] = 5_000_000
    page.goto(server.url)
    expect(state(page)).to_have_text(
        "Readable offline. Calculators not stored: they follow when there is a connection",
        timeout=WAIT,
    )
    page.reload()
    expect(state(page)).to_have_text(STORED, timeout=WAIT)
    [wanted] = server.ranges
    assert 1_000_000 <= int(wanted.removeprefix("bytes=").removesuffix("-")) <= 5_000_000
    leftovers = page.evaluate(
        """async () => {
            const store = await caches.open(`underhoist-runtime ${location.href}`);
            return (await store.keys()).filter(({url}) => url.includes("?")).length;
        }"""
    )
    assert leftovers == 0


def test_the_image_is_stored_unpacked_and_python_comes_back_from_it(phone, server):
    page = phone.new_page()
    asked = []
    phone.on("request", lambda request: asked.append(request.url))
    store_all(page, server)
    stored, listed = page.evaluate(
        """async () => {
            const {image, files} = await (await fetch("runtime/manifest.json")).json();
            const store = await caches.open(`underhoist-runtime ${location.href}`);
            const content = await (await store.match(image)).arrayBuffer();
            const hash = new Uint8Array(await crypto.subtle.digest("SHA-256", content));
            return [
                Array.from(hash, (byte) => byte.toString(16).padStart(2, "0")).join(""),
                files.find(({url}) => url === image).stored_sha256,
            ];
        }"""
    )
    assert stored == listed
    server.stop()
    asked.clear()
    page.goto(f"{server.url}calculators/torque-units/?torque=9+lbf*ft")
    page.wait_for_selector("#calculator[data-answered='yes']", timeout=WAIT)
    assert [url for url in asked if "/runtime/core-" in url], "the worker's requests are not seen"
    assert [url for url in asked if "/runtime/wheel-" in url] == []


def test_a_damaged_file_is_never_called_stored(phone, server, tmp_path):
    folder = tmp_path / "site"
    shutil.copytree(server.folder, folder)
    [wasm] = folder.glob("runtime/*/pyodide.asm.wasm")
    whole = wasm.read_bytes()
    middle = len(whole) // 2
    wasm.write_bytes(whole[:middle] + bytes([whole[middle] ^ 1]) + whole[middle + 1 :])
    server.folder = folder
    server.stop()
    server.start()
    page = phone.new_page()
    page.goto(server.url)
    expect(state(page)).to_contain_text("Calculators not stored", timeout=WAIT)
    wasm.write_bytes(whole)
    page.goto(f"{server.url}offline/")
    expect(page.locator("#stored-runtime")).to_contain_text("Calculators offline", timeout=WAIT)


def test_a_page_that_is_not_as_the_list_has_it_is_said_and_tried_again(phone, server, tmp_path):
    """A site that is only half uploaded: the browser refuses to store what does not match."""
    folder = tmp_path / "site"
    shutil.copytree(server.folder, folder)
    changed = folder / "kestrel-3" / "set-band" / "index.html"
    whole = changed.read_bytes()
    changed.write_bytes(whole + b"<p>Half.")
    serve_instead(server, folder)
    page = phone.new_page()
    page.goto(server.url)
    expect(state(page)).to_have_text(
        re.compile(r"Not all stored: \d+ of \d+ files\. It is tried again in a minute"),
        timeout=WAIT,
    )
    assert page.evaluate("document.documentElement.dataset.textStored") is None
    changed.write_bytes(whole)
    page.evaluate("dispatchEvent(new Event('online'))")
    expect(state(page)).to_have_text(STORED, timeout=WAIT)


def test_the_offline_page_says_since_when_and_repairs_what_is_gone(phone, server):
    page = phone.new_page()
    store_all(page, server)
    page.goto(f"{server.url}offline/")
    expect(page.locator("#stored-text")).to_contain_text("Readable offline, since ")
    expect(page.locator("#stored-runtime")).to_contain_text("Calculators offline, since ")
    page.evaluate(
        """async () => {
            const names = await caches.keys();
            const pages = await caches.open(names.find(name => name.includes("-precache-")));
            const page = (await pages.keys()).find(({url}) => url.includes("kestrel-3/set-band/"));
            await pages.delete(page);
            const runtime = await caches.open(names.find(name => name.includes("-runtime ")));
            const wasm = (await runtime.keys()).find(({url}) => url.endsWith(".wasm"));
            const {headers} = await runtime.match(wasm);
            await runtime.put(wasm, new Response("not what it was", {headers}));
        }"""
    )
    page.get_by_role("button", name="Store or repair").click()
    expect(page.locator(".uh-stored__said")).to_have_text(
        "Repaired: 2 missing or damaged files were fetched again", timeout=WAIT
    )
    server.stop()
    assert page.goto(f"{server.url}kestrel-3/set-band/").status == 200
    expect(state(page)).to_have_text(STORED, timeout=WAIT)


@pytest.fixture
def newer(site, tmp_path):
    """The same manual one sentence later."""
    folder = tmp_path / "newer"
    shutil.copytree(site, folder)
    page = folder / "kestrel-3" / "set-band" / "index.html"
    text = page.read_text(encoding="utf-8")
    page.write_text(text.replace("</h1>", ", newer</h1>", 1), encoding="utf-8")
    write_service_worker(folder, tools.node_modules(folder))
    return folder


def serve_instead(server: StaticServer, folder):
    server.stop()
    server.folder = folder
    server.start()
    server.requests.clear()


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
    assert set(server.requests) == {
        "/sw.js", "/kestrel-3/set-band/index.html", "/offline/files.json",
    }  # fmt: skip
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


def test_progress_is_said_in_words_while_storing(phone, server):
    page = phone.new_page()
    page.add_init_script(
        """addEventListener("DOMContentLoaded", () => {
            const place = document.querySelector("#offline-state");
            globalThis.said = [];
            const note = () => said.push(place.textContent);
            new MutationObserver(note).observe(place, {childList: true});
        })"""
    )
    store_all(page, server)
    said = page.evaluate("said")
    total = len(json.loads((server.folder / "offline" / "files.json").read_text())["urls"])
    text = [words for words in said if words.startswith("Storing the manual: ")]
    runtime = [words for words in said if "Storing the calculators: " in words]
    assert text
    assert all(words.endswith(f" of {total} files") for words in text)
    assert runtime
    assert said.index("Readable offline") < said.index(runtime[0]) < said.index(STORED)
