"""axe-core finds nothing on any screen of a job card, light and dark.

Within a page axe is twice as fast from the second look on, so the views are turned to.
"""

from __future__ import annotations

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
ALONE = ("#new", "#take-in", "#sync")

FULL = """() => {
    IDBObjectStore.prototype.add = () => { throw new DOMException("", "QuotaExceededError"); };
}"""


def test_axe_finds_nothing_on_the_views_of_a_card(page, site_url):
    card = filled_card(page, site_url, findings=FINDINGS, photos=[True, False], skip=["drop-pan 3"])
    open_cards(page, site_url)
    for part in PARTS:
        turn_to(page, f"#card/{card}/{part}")
        assert findings(page) == [], part
    turn_to(page, f"#card/{card}/close")
    page.get_by_role("button", name="Close the card").click()
    expect(page.get_by_text("Closed by")).to_be_visible()
    assert findings(page) == [], "closed"
    turn_to(page, f"#card/{card}/")
    assert findings(page) == [], "a closed card's work"


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


def test_axe_finds_nothing_in_any_state_of_the_work(page, site_url):
    card = fresh_card(page, site_url, "set-band")
    show(page, site_url, card, "1")
    assert findings(page) == [], "to do"
    page.get_by_role("button", name="Finding", exact=True).click()
    assert findings(page) == [], "a finding"
    page.get_by_role("button", name="Cancel").click()
    tick_off(page)
    go_to(page, site_url, card, 1)
    assert findings(page) == [], "stored"
    go_to(page, site_url, card, 4)
    page.get_by_label("Turns until the adjuster seats").click()
    assert findings(page) == [], "the pad"
    page.get_by_label("Turns until the adjuster seats").fill("9")
    page.get_by_role("button", name="Record", exact=True).click()
    page.get_by_role("button", name="Make it a finding").click()
    assert findings(page) == [], "a reading outside its limits"
    go_to(page, site_url, card, 7)
    tick_off(page)
    assert findings(page) == [], "a second check asked for"
    page.get_by_role("button", name="Later").click()
    page.get_by_role("button", name="Hand back").click()
    page.get_by_label("What do you want to ask?").fill("Is this the right nut?")
    assert findings(page) == [], "a question"
    page.locator(".uh-card__ask button[type=submit]").click()
    turn_to(page, f"#card/{card}/questions")
    assert findings(page) == [], "an open question"
    turn_to(page, f"#card/{card}/close")
    assert findings(page) == [], "a card that cannot be closed"
    turn_to(page, f"#card/{card}/2")
    page.evaluate(FULL)
    take_time(page)
    tick(page).click()
    expect(page.locator(".uh-tick__word")).to_have_text("Not stored yet")
    assert findings(page) == [], "not stored"


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
