"""axe-core finds nothing on any screen of a job card, light and dark.

Within a page axe is twice as fast from the second look on, so the views are turned to.
"""

from __future__ import annotations

import re

import pytest
from axe_core import findings
from card_filled import FINDINGS, filled_card, show
from card_hands import fresh_card, go_to, open_cards, take_time, tick, tick_off, turn_to
from playwright.sync_api import expect

pytestmark = pytest.mark.browser


PARTS = (
    "", "add", "fault", "fetch", "jobs", "findings", "questions", "vehicle", "sheet", "owner",
    "parts", "close", "share",
)  # fmt: skip
LONG = "The rear universal joint has play in both caps and the grease is dry. " * 5
ALONE = ("#new", "#take-in", "#sync")

FULL = """() => {
    IDBObjectStore.prototype.add = () => { throw new DOMException("", "QuotaExceededError"); };
}"""


def looks_right(page, where):
    """Check that axe finds nothing and nothing is wider than the smallest phone."""
    assert findings(page) == [], where
    assert page.evaluate("document.documentElement.scrollWidth") <= 360, where


def test_axe_finds_nothing_on_the_views_of_a_card(small_phone, site_url):
    page = small_phone
    card = filled_card(
        page, site_url, off=["pan"], skip=["drop-pan 3"], findings=FINDINGS, photos=[True, False]
    )
    open_cards(page, site_url)
    for part in PARTS:
        turn_to(page, f"#card/{card}/{part}")
        looks_right(page, part)
    with page.expect_download():
        page.get_by_role("button", name="Save the file").click()
    expect(page.locator("#cards").get_by_role("status")).not_to_be_empty()
    looks_right(page, "a saved file")
    turn_to(page, f"#card/{card}/close")
    page.get_by_role("button", name="Close the card").click()
    reason = page.locator(".uh-card__ask textarea")
    expect(reason).to_be_focused()
    looks_right(page, "a reason asked for")
    reason.fill("Sealed")
    page.get_by_role("button", name="Close the card with this reason").click()
    expect(page.get_by_text(re.compile("^Closed by RB, "))).to_be_visible()
    looks_right(page, "closed")
    turn_to(page, f"#card/{card}/")
    looks_right(page, "a closed card's work")


def test_axe_finds_nothing_beside_the_cards(page, site_url):
    open_cards(page, site_url)
    assert findings(page) == [], "no cards"
    open_cards(page, site_url, "#new")
    assert findings(page) == [], "who are you"
    fresh_card(page, site_url, "set-band")
    open_cards(page, site_url)
    assert findings(page) == [], "the list of cards"
    for hash_ in ALONE:
        turn_to(page, hash_)
        assert findings(page) == [], hash_
    turn_to(page, "#new")
    page.get_by_role("button", name="Start the card").click()
    assert findings(page) == [], "a new card with errors"


def test_axe_finds_nothing_in_any_state_of_the_work(small_phone, site_url):
    page = small_phone
    card = fresh_card(page, site_url, "set-band")
    show(page, site_url, card, "1")
    looks_right(page, "to do")
    page.get_by_role("button", name="Finding", exact=True).click()
    looks_right(page, "a finding asked for")
    page.get_by_label("What did you find?").fill(LONG)
    page.get_by_label("On this visit").check()
    page.get_by_role("button", name="Write it down").click()
    expect(page.locator(".uh-finding__what")).to_be_visible()
    tick_off(page)
    go_to(page, site_url, card, 1)
    looks_right(page, "stored, and a finding")
    go_to(page, site_url, card, 4)
    page.get_by_label("Turns until the adjuster seats").click()
    looks_right(page, "the pad")
    page.get_by_label("Turns until the adjuster seats").fill("9")
    page.get_by_role("button", name="Record", exact=True).click()
    page.get_by_role("button", name="Make it a finding").click()
    looks_right(page, "a reading outside its limits")
    go_to(page, site_url, card, 7)
    tick_off(page)
    looks_right(page, "a second check asked for")
    page.get_by_role("button", name="Later").click()
    page.get_by_role("button", name="Hand back").click()
    page.get_by_label("What do you want to ask?").fill("W" * 90)
    looks_right(page, "a question")
    page.locator(".uh-card__ask button[type=submit]").click()
    expect(page.locator(".uh-card__left")).to_contain_text("1 question")
    turn_to(page, f"#card/{card}/questions")
    looks_right(page, "an open question")
    page.get_by_role("button", name="Answer").click()
    looks_right(page, "an answer asked for")
    turn_to(page, f"#card/{card}/findings")
    page.get_by_role("button", name="Decide").click()
    looks_right(page, "a decision asked for")
    turn_to(page, f"#card/{card}/close")
    looks_right(page, "a card that cannot be closed")
    turn_to(page, f"#card/{card}/2")
    page.evaluate(FULL)
    take_time(page)
    tick(page).click()
    expect(page.locator(".uh-tick__word")).to_have_text("Not stored yet")
    looks_right(page, "not stored")


def test_a_screen_reader_is_told_what_the_tick_is_and_how_it_stands(page, site_url):
    card = fresh_card(page, site_url, "set-band")
    show(page, site_url, card, "1")
    tick_off(page)
    go_to(page, site_url, card, 1)
    name = "Step 1: Wipe the adjuster and the case around it clean."
    pressed = page.get_by_role("button", name=name, pressed=True)
    assert pressed.count() == 1
    assert tick(page).get_attribute("aria-describedby") == "uh-tick-word"
    after = page.get_by_role("button", name="To do: 2. Mark one corner of the square")
    assert after.count() == 1, "a neighbour says in words how it stands"
    page.evaluate(FULL)
    go_to(page, site_url, card, 2)
    take_time(page)
    tick(page).click()
    expect(page.locator(".uh-tick__word")).to_have_text("Not stored yet")
    assert tick(page).get_attribute("aria-pressed") == "false", "not pressed before it is stored"
