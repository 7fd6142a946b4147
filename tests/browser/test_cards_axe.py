"""axe-core finds nothing on any screen of a job card, light or dark."""

from __future__ import annotations

import pytest
from card_hands import go_to, open_cards, start_card, tick, tick_off
from test_axe import findings

pytestmark = pytest.mark.browser


@pytest.mark.parametrize("paper", ["light", "dark"])
def test_axe_finds_nothing_on_a_card(page, site_url, paper):
    page.add_init_script(f"localStorage.setItem('paper', '{paper}')")
    open_cards(page, site_url, "#new")
    assert findings(page) == [], "who are you"
    card = start_card(page, site_url, "set-band")
    assert page.locator("html").get_attribute("data-paper") == paper
    assert findings(page) == [], "the first step"
    tick_off(page)
    go_to(page, site_url, card, 4)
    page.get_by_role("button", name="Not readable").click()
    assert findings(page) == [], "a reading that is refused"
    go_to(page, site_url, card, 7)
    tick_off(page)
    assert findings(page) == [], "a second check asked for"
    page.get_by_role("button", name="Later").click()
    page.get_by_role("button", name="Hand back").click()
    assert findings(page) == [], "a question"
    for part in ("sheet", "fetch", "add", "close"):
        open_cards(page, site_url, f"#card/{card}/{part}")
        assert findings(page) == [], part
    open_cards(page, site_url, "#new")
    page.get_by_role("button", name="Start the card").click()
    assert findings(page) == [], "a new card with errors"
    open_cards(page, site_url, "#")
    assert findings(page) == [], "the list"


def test_a_screen_reader_is_told_what_the_tick_is_and_how_it_stands(page, site_url):
    card = start_card(page, site_url, "set-band")
    tick_off(page)
    go_to(page, site_url, card, 1)
    name = "Step 1: Wipe the adjuster and the case around it clean."
    pressed = page.get_by_role("button", name=name, pressed=True)
    assert pressed.count() == 1
    assert tick(page).get_attribute("aria-describedby") == "uh-tick-word"
    after = page.get_by_role("button", name="To do: 2. Mark one corner of the square")
    assert after.count() == 1, "a neighbour says in words how it stands"
