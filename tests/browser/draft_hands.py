"""What a person does on the drafting page."""

from __future__ import annotations

import re
from pathlib import Path

from playwright.sync_api import Page, expect

BOOT = 60_000
"""Longest wait, in ms, for Python to come up on a busy machine."""

BAND = "kestrel-3/set-band.md"
WARNING = "This browser has not promised to keep drafts."

WITHOUT_PYTHON = """window.Worker = class extends EventTarget {
    postMessage() {}
    terminate() {}
}"""
"""Python never comes up and no check ends, which costs nothing to wait for."""

TURN = """way => {
    document.querySelector("#drafts > *").dataset.left = "";
    if (location.hash === way) dispatchEvent(new HashChangeEvent("hashchange"));
    else location.hash = way;
}"""


def open_drafting(page: Page, site_url: str, way: str = "") -> None:
    page.goto("about:blank")  # a change of the hash alone is no visit
    page.goto(f"{site_url}drafting/{way}")
    page.locator("#drafts[data-ready]").wait_for()


def turn_to(page: Page, site_url: str, way: str) -> None:
    """Show a view. Where the drafting page is open already, its Python goes on running."""
    if page.url.startswith(f"{site_url}drafting/"):
        page.evaluate(TURN, way)
        page.locator("#drafts > [data-left]").wait_for(state="detached")
    else:
        open_drafting(page, site_url, way)


def begin_change(page: Page, site_url: str, file: str = BAND) -> str:
    """Begin a draft from a page of the manual; returns its address."""
    turn_to(page, site_url, "#change")
    page.get_by_label("Find the page").fill(Path(file).stem)
    page.locator("li", has_text=file).get_by_role("button").first.click()
    return begun(page)


def change_page(page: Page, site_url: str, file: str = BAND) -> str:
    """The same, and wait until it was checked."""
    way = begin_change(page, site_url, file)
    checked(page)
    return way


def begin_page(page: Page, site_url: str, title: str, kind: str = "Procedure") -> str:
    """Begin a draft of a new page; returns its address."""
    turn_to(page, site_url, "#new")
    page.get_by_label("Kind of page").select_option(label=kind)
    page.get_by_label("Title").fill(title)
    page.get_by_role("button", name="Begin").click()
    return begun(page)


def new_page(page: Page, site_url: str, title: str, kind: str = "Procedure") -> str:
    """The same, and wait until it was checked."""
    way = begin_page(page, site_url, title, kind)
    checked(page)
    return way


def begun(page: Page) -> str:
    expect(text_field(page)).to_be_visible()
    return page.evaluate("location.hash")


def checked(page: Page) -> None:
    """Wait for the first findings."""
    page.locator(".uh-desk[data-checked]").wait_for(timeout=BOOT)


def text_field(page: Page):
    return page.get_by_label("Text of the page")


def write(page: Page, text: str) -> None:
    """Put this text in place of the draft's and wait until it is stored."""
    text_field(page).fill(text)
    stored(page)


def stored(page: Page) -> None:
    state = page.locator(".uh-desk__state")
    expect(state).to_have_attribute("data-state", "stored")
    expect(state).to_have_text(re.compile(r"^Stored on this device \d\d:\d\d$"))


def summary(page: Page):
    return page.locator(".uh-desk__summary")
