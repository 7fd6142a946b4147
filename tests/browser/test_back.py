"""A page that was left while it stored something is there at once when the reader goes back."""

from __future__ import annotations

import shutil
from threading import Event

import pytest
from chromium import CHROMIUM
from offline_hands import wait_for

pytestmark = pytest.mark.browser

STORE = """() => {
    window.marked = true;
    void import("/assets/phone/keeper.js").then(({keeper}) => keeper("store"));
    const nothing = () => {};
    void import("/assets/phone/text-store.js")
        .then(({watchStoring}) => watchStoring(nothing, nothing));
}"""
TOLD = "() => new BroadcastChannel(`underhoist-text ${location.origin}/`).postMessage({stored: 1})"


@pytest.fixture
def back_page(browser_type, browser_type_launch_args, browser_context_args):
    """A page of a browser that keeps what was left: the headless one does not."""
    whole = {"executable_path": shutil.which("chromium")} if CHROMIUM else {}
    own = browser_type.launch(
        **{**browser_type_launch_args, **whole},
        ignore_default_args=["--disable-back-forward-cache"],
    )
    yield own.new_context(**browser_context_args).new_page()
    own.close()


def test_going_back_needs_no_loading_while_the_runtime_is_stored(back_page, server):
    server.held["pyodide.asm.wasm.bin"] = Event()  # a slow line
    back_page.goto(f"{server.url}hazards/hot-fluid/")
    back_page.evaluate(STORE)
    wait_for(back_page, lambda: asked(server) == 1)

    back_page.goto(f"{server.url}tools/")
    back_page.evaluate(STORE)  # wants the lock that the page before held
    wait_for(back_page, lambda: asked(server) == 2)
    back_page.evaluate(TOLD)

    back_page.evaluate("() => { delete window.marked; setTimeout(() => history.back(), 0); }")
    back_page.wait_for_url("**/hot-fluid/", wait_until="commit")
    assert back_page.evaluate("() => window.marked")
    server.held["pyodide.asm.wasm.bin"].set()


def asked(server):
    """How often the largest file of the runtime was asked for."""
    return sum(n for path, n in server.requests.items() if path.endswith("pyodide.asm.wasm.bin"))
