"""Python begins from a copy of what is stored, in a file: never from one that is not whole."""

from __future__ import annotations

import pytest
from offline_hands import SPOIL, WAIT, wait_for
from playwright.sync_api import expect

pytestmark = pytest.mark.browser

NINE = "calculators/torque-units/?torque=9+lbf*ft"

# The one file, its size and the three sizes at its beginning; or nothing.
LOOK = """async () => {
    const place = await navigator.storage.getDirectory();
    for await (const folder of place.values()) {
        for await (const handle of folder.values()) {
            const file = await handle.getFile();
            const sizes = new Uint32Array(await file.slice(0, 12).arrayBuffer());
            return {size: file.size, sizes: [...sizes]};
        }
    }
    return null;
}"""

# One byte of it: read, and made another; or the file cut off there.
CHANGE = """async ([at, cut]) => {
    const place = await navigator.storage.getDirectory();
    const [folder] = await Array.fromAsync(place.values());
    const [handle] = await Array.fromAsync(folder.values());
    const [byte] = new Uint8Array(await (await handle.getFile()).slice(at, at + 1).arrayBuffer());
    const writing = await handle.createWritable({keepExistingData: true});
    if (cut) await writing.truncate(at);
    else await writing.write({type: "write", position: at, data: Uint8Array.of(byte ^ 1)});
    await writing.close();
    return byte;
}"""

BYTE = """async (at) => {
    const place = await navigator.storage.getDirectory();
    for await (const folder of place.values()) {
        for await (const handle of folder.values()) {
            const part = (await handle.getFile()).slice(at, at + 1);
            return new Uint8Array(await part.arrayBuffer())[0];
        }
    }
}"""


@pytest.fixture
def page(at_front, shop):
    """That phone with a copy that is whole, and its server gone."""
    wait_for(at_front, lambda: all((at_front.evaluate(LOOK) or {"sizes": [0]})["sizes"]))
    shop.stop()
    return at_front


def answers(page, shop):
    page.goto(f"{shop.url}{NINE}")
    page.wait_for_selector("#calculator[data-answered='yes']", timeout=WAIT)
    expect(page.locator(".uh-answer")).to_contain_text("12.2")  # N·m


def test_the_copy_holds_the_image_the_program_and_the_library(page):
    found = page.evaluate(LOOK)
    assert 12 + sum(found["sizes"]) == found["size"]
    assert all(size > 1_000_000 for size in found["sizes"])


def test_python_begins_from_the_copy(page, shop):
    for ending in ("python.bin", "pyodide.asm.wasm", "python_stdlib.zip"):
        page.evaluate(SPOIL, ["runtime", ending])
    answers(page, shop)
    shop.start()
    page.goto(f"{shop.url}offline/")
    page.get_by_role("button", name="Store or repair").click()
    expect(page.locator(".uh-stored__said")).to_contain_text("Repaired: 3", timeout=WAIT)


PARTS = ["image", "library", "program"]


@pytest.mark.parametrize("part", PARTS)
def test_one_wrong_bit_in_the_copy_is_noticed_and_the_store_serves(page, shop, part):
    sizes = page.evaluate(LOOK)["sizes"]
    number = PARTS.index(part)
    at = 12 + sum(sizes[:number]) + sizes[number] // 2
    byte = page.evaluate(CHANGE, [at, False])
    answers(page, shop)
    wait_for(page, lambda: page.evaluate(BYTE, at) == byte)


@pytest.mark.parametrize("at", [1_000, 20_000_000])
def test_a_copy_that_is_cut_off_is_not_used(page, shop, at):
    page.evaluate(CHANGE, [at, True])
    answers(page, shop)


def test_a_page_that_calculates_begins_with_its_thread_and_makes_no_other(page, shop):
    begun = []
    page.on("worker", lambda worker: begun.append(worker.url.rpartition("/")[2]))
    answers(page, shop)
    assert begun.count("calculator-worker.js") == 1
    assert page.evaluate("'earlyPython' in globalThis && earlyPython === undefined"), "not taken"


def test_where_the_thread_fails_before_the_page_s_scripts_another_is_made(stored, page, shop):
    other = stored.new_page()
    other.add_init_script("""
        const Before = Worker;
        globalThis.made = 0;
        globalThis.Worker = class extends Before {
            constructor(url, given) {
                super(made++ ? url : "/no-such-script.js", given);
            }
        };
    """)
    answers(other, shop)
    assert other.evaluate("made") >= 2
    other.close()
