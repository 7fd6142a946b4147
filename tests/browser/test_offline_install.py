"""The first visit: what is fetched, said, resumed and refused."""

from __future__ import annotations

import json
import re
import shutil

import pytest
from offline_hands import STORED, WAIT, WRONG, serve_instead, spoil, state, store_all, wait_for
from playwright.sync_api import expect

pytestmark = pytest.mark.browser


@pytest.fixture(scope="session")
def site(lean_site):
    """Little to store."""
    return lean_site


def test_a_broken_connection_costs_only_the_last_piece(phone, server):
    page = phone.new_page()
    server.cut_once["pyodide.asm.wasm.bin"] = 2_500_000
    page.goto(server.url)
    expect(state(page)).to_have_text(
        "Readable offline. Calculators not stored: they follow when there is a connection",
        timeout=WAIT,
    )
    page.reload()
    expect(state(page)).to_have_text(STORED, timeout=WAIT)
    [wanted] = server.ranges
    assert 1_000_000 <= int(wanted.removeprefix("bytes=").removesuffix("-")) <= 2_500_000
    leftovers = page.evaluate(
        """async () => {
            const store = await caches.open(`underhoist-runtime ${location.href}`);
            return (await store.keys()).filter(({url}) => url.includes("?")).length;
        }"""
    )
    assert leftovers == 0


def test_a_damaged_file_is_never_called_stored(phone, server, tmp_path):
    folder = tmp_path / "site"
    shutil.copytree(server.folder, folder)
    [wasm] = folder.glob("runtime/*/pyodide.asm.wasm.bin")
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
    """A site that is only half uploaded: nothing is stored that does not match."""
    folder = tmp_path / "site"
    shutil.copytree(server.folder, folder)
    page = "kestrel-3/set-band/index.html"
    halves = [folder / page, bundle_of(folder, page)]
    whole = [half.read_bytes() for half in halves]
    for half, content in zip(halves, whole, strict=True):
        half.write_bytes(content[:-9])
    serve_instead(server, folder)
    page = phone.new_page()
    page.goto(server.url)
    expect(state(page)).to_have_text(
        re.compile(r"Not all stored: \d+ of \d+ files\. It is tried again in a minute"),
        timeout=WAIT,
    )
    assert page.evaluate("document.documentElement.dataset.textStored") is None
    for half, content in zip(halves, whole, strict=True):
        half.write_bytes(content)
    page.evaluate("dispatchEvent(new Event('online'))")
    expect(state(page)).to_have_text(STORED, timeout=WAIT)


def bundle_of(folder, page):
    """The packed file that holds this page."""
    bundles = json.loads((folder / "offline" / "files.json").read_text())["bundles"]
    [found] = [each for each in bundles if any(page == path for path, _, _ in each["files"])]
    return folder / found["url"]


def test_a_first_visit_asks_for_bundles_and_not_for_pages(phone, server):
    page = phone.new_page()
    store_all(page, server)
    asked = {path: count for path, count in server.requests.items() if path.endswith(".html")}
    assert asked == {}
    bundles = {path: n for path, n in server.requests.items() if "/bundles/" in path}
    assert set(bundles.values()) == {1}
    assert len(bundles) == len(list(server.folder.glob("offline/bundles/*")))
    assert sum(server.requests.values()) < 80


def test_a_connection_lost_while_pages_arrive_costs_only_what_was_under_way(phone, server):
    last = sorted(server.folder.glob("offline/bundles/*"), key=lambda file: file.stat().st_size)[-1]
    server.cut_once[last.name] = 100_000
    page = phone.new_page()
    page.goto(server.url)
    said = re.compile(r"Not all stored: \d+ of \d+ files\. It is tried again in a minute")
    expect(state(page)).to_have_text(said, timeout=WAIT)
    whole = [path for path in server.requests if "/bundles/" in path and last.name not in path]
    page.evaluate("dispatchEvent(new Event('online'))")
    expect(state(page)).to_have_text(STORED, timeout=WAIT)
    assert server.requests[f"/offline/bundles/{last.name}"] == 2
    assert whole
    assert {server.requests[path] for path in whole} <= {1, 2}


LEFT = """async () => {
    const store = await caches.open(`underhoist-text ${location.href}`);
    return (await store.keys()).map(({url}) => new URL(url).pathname);
}"""


def test_what_a_broken_off_visit_left_is_proven_before_it_counts(phone, server):
    """As a browser that dies in the middle of writing may leave it."""
    last = sorted(server.folder.glob("offline/bundles/*"), key=lambda file: file.stat().st_size)[-1]
    server.cut_once[last.name] = 100_000
    page = phone.new_page()
    page.goto(server.url)
    expect(state(page)).to_contain_text("It is tried again in a minute", timeout=WAIT)
    wait_for(page, lambda: page.evaluate(LEFT))  # other bundles may still be under way
    spoil(page, "text", page.evaluate(LEFT)[0])
    page.evaluate("dispatchEvent(new Event('online'))")
    expect(state(page)).to_have_text(STORED, timeout=WAIT)
    server.stop()
    assert page.evaluate(WRONG) == []


def test_the_offline_page_says_since_when_and_repairs_what_is_gone(phone, server):
    page = phone.new_page()
    store_all(page, server)
    page.goto(f"{server.url}offline/")
    expect(page.locator("#stored-text")).to_contain_text("Readable offline, since ")
    expect(page.locator("#stored-runtime")).to_contain_text("Calculators offline, since ")
    room = page.locator("#stored-room")
    expect(room).to_have_text(re.compile(r"About \d+ MB on this phone, job cards among it"))
    taken = page.evaluate("async () => (await navigator.storage.estimate()).usage")
    assert abs(int(room.text_content().split()[1]) - taken / 1e6) < 3
    page.evaluate(
        """async () => {
            const names = await caches.keys();
            const pages = await caches.open(names.find(name => name.includes("-text ")));
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


def test_progress_is_said_in_words_while_storing(phone, server):
    page = phone.new_page()
    page.add_init_script(
        """addEventListener("DOMContentLoaded", () => {
            const place = document.querySelector("#offline-state");
            globalThis.said = [];
            const note = () => said.push(place.textContent);
            new MutationObserver(note).observe(place, {childList: true});
            globalThis.rows = [];
            const row = () => rows.push(document.querySelector("#stored-text")?.textContent ?? "");
            const list = document.querySelector("#stored");
            new MutationObserver(row).observe(list, {childList: true, subtree: true});
        })"""
    )
    page.goto(f"{server.url}offline/")
    expect(state(page)).to_have_text(STORED, timeout=WAIT)
    said, rows = page.evaluate("[said, rows]")
    assert any(re.fullmatch(r"Being stored: \d+ of \d+ files", words) for words in rows)
    expect(page.locator("#stored-text")).to_contain_text("Readable offline, since ")
    expect(page.locator("#stored-runtime")).to_contain_text("Calculators offline, since ")
    total = json.loads((server.folder / "offline" / "files.json").read_text())["files"]
    text = [words for words in said if words.startswith("Storing the manual: ")]
    runtime = [words for words in said if words.startswith("Readable offline. Calculators: ")]
    assert text
    assert all(words.endswith(f" of {total} files") for words in text)
    assert runtime
    assert said.index("Readable offline") < said.index(runtime[0]) < said.index(STORED)
