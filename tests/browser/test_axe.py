"""axe-core finds nothing in what a reader does to a page, and does find a fault that is there.

Each kind of page as it comes is looked at in `test_kinds.py`.
"""

import json
from pathlib import Path

import card_hands
import pytest
from axe_core import findings
from desk_answers import answered_at_the_desk
from playwright.sync_api import Page, expect

pytestmark = pytest.mark.browser

HERE = Path(__file__).parent
KINDS: dict[str, str] = json.loads((HERE / "kinds.json").read_text())
TURN_TO = """hash => {
    document.querySelector("#cards > *").dataset.before = "";
    location.hash = hash;
}"""


def test_axe_finds_nothing_beside_an_entry_that_is_wrong(page: Page, site_url: str) -> None:
    answered_at_the_desk(page)
    page.goto(site_url + KINDS["torque-units"])
    page.locator("form.uh-calc input").first.fill("twelve")
    page.locator("form.uh-calc button[type=submit]").click()
    page.locator("[aria-invalid=true]").first.wait_for(timeout=60_000)
    assert findings(page) == []


def test_axe_finds_nothing_while_a_card_is_worked_on(page: Page, site_url: str) -> None:
    card = card_hands.begun_card(page, site_url, "set-band")
    assert findings(page) == []
    card_hands.tick_off(page)
    for view in (f"#card/{card}/sheet", f"#card/{card}/add", f"#card/{card}/close", "#new"):
        page.evaluate(TURN_TO, view)
        expect(page.locator("#cards > *").first).not_to_have_attribute("data-before", "")
        assert findings(page) == [], view


def test_axe_does_find_a_fault_that_is_there(same_page: Page, site_url: str) -> None:
    same_page.goto(site_url + KINDS["part"])
    same_page.evaluate("document.querySelector('main').append(document.createElement('button'))")
    assert any(fault.startswith("button-name") for fault in findings(same_page))


PALE = """() => {
    const pale = document.createElement("p");
    pale.textContent = "Not black enough";
    Object.assign(pale.style, { color: "#767676", background: "#ffffff" });
    document.querySelector("main").append(pale);
}"""
"""4.54:1 on white: enough for AA, and less than 7:1."""


def test_axe_does_find_a_pale_text_on_either_paper(same_page: Page, site_url: str) -> None:
    same_page.goto(site_url + KINDS["part"])
    same_page.evaluate(PALE)
    found = [fault for fault in findings(same_page) if "Not black enough" in fault]
    assert [fault.split(":")[0] for fault in found] == ["color-contrast-enhanced"] * 2
