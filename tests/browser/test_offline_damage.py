"""What is stored and then spoilt: noticed when it is wanted, fetched again, or said plainly."""

from __future__ import annotations

import pytest
from offline_hands import STORED, WAIT, spoil, state, wait_for
from playwright.sync_api import expect

pytestmark = pytest.mark.browser


@pytest.fixture
def page(at_front):
    """That phone, its server there; each test leaves everything whole."""
    return at_front


def test_a_damaged_page_is_fetched_again_when_it_is_opened(page, shop):
    spoil(page, "text", "kestrel-3/set-band/index.html")
    page.goto(f"{shop.url}kestrel-3/set-band/")
    expect(page.locator("h1")).to_contain_text("band")
    assert shop.requests["/kestrel-3/set-band/index.html"] == 1
    shop.stop()
    page.reload()
    expect(page.locator("h1")).to_contain_text("band")


def test_a_damaged_page_without_a_server_is_said_and_the_rest_can_be_read(page, shop):
    spoil(page, "text", "kestrel-3/set-band/index.html")
    shop.stop()
    assert page.goto(f"{shop.url}kestrel-3/set-band/").status == 503
    expect(page.locator("h1")).to_have_text("This page is damaged")
    expect(page.locator("main p").first).to_have_text(
        "What this phone has stored of it is not what was written, so it is not shown. "
        "With a connection it is fetched again: then load this page again."
    )
    page.get_by_role("link", name="Start of the manual").click()
    expect(page.locator("h1")).to_be_visible()
    assert page.url == shop.url
    shop.start()
    page.goto(f"{shop.url}kestrel-3/set-band/")
    expect(page.locator("h1")).to_contain_text("band")


def test_a_damaged_list_leaves_every_page_readable_without_a_server(page, shop):
    spoil(page, "text", "offline/files.json")
    shop.stop()
    assert page.goto(f"{shop.url}kestrel-3/set-band/").status == 200
    expect(page.locator("h1")).to_contain_text("band")
    shop.start()
    page.goto(f"{shop.url}offline/")
    page.get_by_role("button", name="Store or repair").click()
    expect(page.locator(".uh-stored__said")).to_contain_text("fetched again", timeout=WAIT)


def test_damaged_runtime_files_give_no_wrong_answer_and_are_fetched_again(page, shop):
    """The memory image and the interpreter: Python starts once for both."""
    spoil(page, "runtime", "python.bin")
    spoil(page, "runtime", "pyodide.asm.wasm")
    page.goto(f"{shop.url}calculators/torque-units/?torque=9+lbf*ft")
    page.wait_for_selector("#calculator[data-answered='yes']", timeout=WAIT)
    expect(page.locator(".uh-answer__summary")).to_contain_text("9 lbf·ft is")
    expect(state(page)).to_have_text(STORED, timeout=WAIT)
    asked = {path.rpartition("/")[2] for path in shop.requests if "/runtime/" in path}
    assert {"python.bin", "pyodide.asm.wasm.bin"} <= asked


def test_a_runtime_that_is_damaged_without_a_server_says_so_and_the_text_is_there(page, shop):
    spoil(page, "runtime", "pyodide.asm.wasm")
    shop.stop()
    page.goto(f"{shop.url}calculators/torque-units/?torque=9+lbf*ft")
    said = page.locator(".uh-calc__state")
    expect(said).to_contain_text(
        "The calculator stopped: it is not stored on this phone and there is no connection",
        timeout=WAIT,
    )
    expect(state(page)).to_have_text(
        "Readable offline. Calculators not stored: they follow when there is a connection",
        timeout=WAIT,
    )
    shop.start()
    page.evaluate("dispatchEvent(new Event('online'))")
    expect(state(page)).to_have_text(STORED, timeout=WAIT)
    said.get_by_role("button", name="Try again").click()
    page.wait_for_selector("#calculator[data-answered='yes']", timeout=WAIT)


def test_once_a_day_everything_is_read_again_and_mended(page, shop):
    spoil(page, "text", "hazards/hot-fluid/index.html")
    page.evaluate("""() => {
        for (const key of Object.keys(localStorage)) {
            if (key.startsWith("underhoist checked")) localStorage.setItem(key, "0");
        }
    }""")
    page.reload()
    wait_for(page, lambda: shop.requests["/hazards/hot-fluid/index.html"] == 1)
