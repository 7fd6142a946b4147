"""The same tick in two windows, a clock set back, a database that hangs: nothing is lost."""

from __future__ import annotations

import re

import pytest
from card_filled import show
from card_hands import (
    chain_is_whole,
    fresh_card,
    go_to,
    open_cards,
    stored_events,
    take_time,
    tick,
    tick_off,
)
from playwright.sync_api import expect

pytestmark = pytest.mark.browser


# Another window holds the record in a transaction that does not end.
HANG = """() => new Promise((done) => {
    const opening = indexedDB.open("underhoist-cards");
    opening.onsuccess = () => {
        const change = opening.result.transaction(["events", "photos"], "readwrite");
        globalThis.held = true;
        const again = () => {
            if (!globalThis.held) return opening.result.close();
            change.objectStore("events").get("").onsuccess = again;
            done();
        };
        again();
    };
})"""


@pytest.fixture
def card(page, site_url):
    """A card with one procedure, at its first step; nothing is done yet."""
    return begin(page, site_url)


def begin(page, site_url):
    """Store a card with one procedure and show its first step; returns its id."""
    card = fresh_card(page, site_url, "set-band")
    show(page, site_url, card, "1")
    expect(tick(page)).to_be_visible()
    return card


def ticks(page, site_url):
    """The steps that were ticked, in the order of the record."""
    events = stored_events(page, site_url)
    return [event["value"]["step"] for event in events if event["kind"] == "tick"]


def test_the_same_step_ticked_in_two_windows_is_done_once_and_by_the_first(page, site_url, card):
    other = page.context.new_page()
    open_cards(other, site_url, f"#card/{card}/1")
    expect(tick(other)).to_be_visible()
    take_time(page)
    for window in (page, other):
        window.evaluate("() => void document.querySelector('button.uh-tick').click()")
    for window in (page, other):
        expect(window.locator(".uh-card__left")).to_have_text("Left: 11 of 12 steps.")
    assert chain_is_whole(page, site_url)


def test_a_clock_that_is_set_back_changes_no_order(page, site_url, card):
    tick_off(page)
    page.evaluate(
        """() => {
            const Real = Date;
            const back = 3 * 365 * 24 * 3600 * 1000;
            globalThis.Date = class extends Real {
                constructor(...given) { given.length ? super(...given) : super(Real.now() - back); }
                static now() { return Real.now() - back; }
            };
        }"""
    )
    tick_off(page)
    go_to(page, site_url, card, 2)
    page.get_by_role("button", name="Undo the tick").click()
    expect(tick(page)).to_have_attribute("data-state", "todo")
    go_to(page, site_url, card, 1)
    expect(tick(page)).to_have_attribute("data-state", "stored")
    events = stored_events(page, site_url)
    assert [event["kind"] for event in events] == ["start", "add", "tick", "tick", "undo"]
    assert events[3]["at"] < events[2]["at"], "the clock was set back"
    assert chain_is_whole(page, site_url)
    open_cards(page, site_url, "#")
    expect(page.get_by_role("link", name="Marlow Drover, green")).to_be_visible()
    expect(page.locator("#cards")).to_contain_text("Left: 11 of 12 steps.")


def test_a_database_that_hangs_leaves_the_step_unconfirmed_and_stores_it_once(new_page, site_url):
    page = new_page
    begin(page, site_url)
    other = page.context.new_page()
    other.goto(f"{site_url}offline/")
    other.evaluate(HANG)
    page.clock.install()
    tick(page).click()
    expect(tick(page)).to_have_attribute("data-state", "storing")
    expect(page.locator(".uh-tick__word")).to_have_text("Being stored")
    assert page.evaluate("'cardUnstored' in document.documentElement.dataset")
    page.clock.fast_forward(7000)  # longer than one try may take
    expect(tick(page)).to_have_attribute("aria-label", re.compile("^Step 1: "))
    expect(tick(page)).to_have_attribute("data-state", "storing")
    other.evaluate("() => { globalThis.held = false; }")
    expect(tick(page)).to_have_attribute("aria-label", re.compile("^Step 2: "))
    assert ticks(page, site_url) == [1]
    assert chain_is_whole(page, site_url)
