"""Records that an earlier version of the page stored: they open, and an upgrade loses nothing."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from card_hands import chain_is_whole, go_to, open_cards, stored_events, tick, tick_off
from playwright.sync_api import expect

pytestmark = pytest.mark.browser


OLD = Path(__file__).resolve().parents[1] / "cards" / "old" / "database-1.json"

# The stores as version 1 made them, and what it put into them.
SEED = """(old) => new Promise((done, fail) => {
    const opening = indexedDB.open("underhoist-cards", 1);
    opening.onupgradeneeded = () => {
        const database = opening.result;
        const events = database.createObjectStore("events", { keyPath: "id" });
        events.createIndex("card", "card");
        events.createIndex("place", ["device", "sequence"], { unique: true });
        events.createIndex("clock", "clock");
        database.createObjectStore("device", { keyPath: "name" });
        for (const event of old.events) opening.transaction.objectStore("events").add(event);
        for (const fact of old.device) opening.transaction.objectStore("device").add(fact);
    };
    opening.onsuccess = () => { opening.result.close(); done(); };
    opening.onerror = () => fail(opening.error);
})"""

VERSION = """async () => (await indexedDB.databases())
    .find(({ name }) => name === "underhoist-cards")?.version"""

CUT_OFF = """
    const real = IDBDatabase.prototype.createObjectStore;
    IDBDatabase.prototype.createObjectStore = function (name, ...words) {
        if (name === "summaries") throw new DOMException("cut off", "AbortError");
        return real.call(this, name, ...words);
    };"""


@pytest.fixture
def old():
    """What the database of version 1 held."""
    return json.loads(OLD.read_text(encoding="utf-8"))


def seed(page, site_url, old):
    """Put the old database under a page that does not open it by itself."""
    page.goto(f"{site_url}offline/")
    page.evaluate(SEED, old)
    assert page.evaluate(VERSION) == 1


def test_a_card_of_the_first_version_opens_with_all_that_is_on_it(page, site_url, old):
    seed(page, site_url, old)
    card = old["events"][0]["card"]
    open_cards(page, site_url)
    line = page.locator(".uh-contents li", has_text="Marlow Drover, green")
    expect(line).to_contain_text("Left: 18 of 22 steps, 1 question.")
    assert page.evaluate(VERSION) == 2
    line.get_by_role("link").click()
    expect(tick(page)).to_be_visible()
    assert page.get_by_text("Who are you?").count() == 0, "the initials are known"
    events = stored_events(page, site_url)
    by_id = {event["id"]: event for event in events}
    assert by_id == {event["id"]: event for event in old["events"]}
    open_cards(page, site_url, f"#card/{card}/sheet")
    sheet = page.locator(".uh-card__sheet")
    for words in ("The shaft is off already", "Early or late seal?", "SL", "84210 km"):
        expect(sheet).to_contain_text(words)


def test_work_goes_on_in_the_chain_of_the_first_version(page, site_url, old):
    seed(page, site_url, old)
    card = old["events"][0]["card"]
    open_cards(page, site_url, f"#card/{card}")
    go_to(page, site_url, card, 1 + next(at for at in range(22) if free(page, site_url, card, at)))
    tick_off(page)
    events = stored_events(page, site_url)
    assert len(events) == len(old["events"]) + 1
    assert events[-1]["device"] == old["events"][0]["device"]
    assert events[-1]["previous"] == old["events"][-1]["hash"]
    assert chain_is_whole(page, site_url)


def free(page, site_url, card, at):
    """Whether the step at this position waits for a plain tick."""
    go_to(page, site_url, card, at + 1)
    waits = tick(page).get_attribute("data-state") == "todo"
    return waits and page.locator(".uh-card__reading").count() == 0


def test_an_upgrade_that_is_cut_off_leaves_the_old_records_as_they_were(page, site_url, old):
    seed(page, site_url, old)
    other = page.context.new_page()
    other.add_init_script(CUT_OFF)
    open_cards(other, site_url)
    expect(other.locator("#cards").get_by_role("alert")).to_contain_text("Do not start work")
    assert other.evaluate(VERSION) == 1
    other.close()
    open_cards(page, site_url)
    expect(page.locator(".uh-contents")).to_contain_text("Left: 18 of 22 steps, 1 question.")
    assert len(stored_events(page, site_url)) == len(old["events"])


def test_a_window_that_holds_the_old_version_is_named_and_waited_for(new_page, site_url, old):
    page = new_page
    seed(page, site_url, old)
    # The old page's connection, and a page too busy to let go of it.
    page.evaluate(
        """() => new Promise((done) => {
            const opening = indexedDB.open("underhoist-cards", 1);
            opening.onsuccess = () => { window.held = opening.result; done(); };
        })"""
    )
    other = page.context.new_page()
    open_cards(other, site_url)
    alert = other.locator("#cards").get_by_role("alert")
    expect(alert).to_contain_text(
        "Do not start work on a card here. Another window still holds an older version of this "
        "page. Close every other window of the manual, then try again."
    )
    page.close()
    other.get_by_role("button", name="Try again").click()
    expect(other.locator(".uh-contents")).to_contain_text("Left: 18 of 22 steps, 1 question.")
