"""Storage that fails: what is said, and that a step is never shown as done before it is stored."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from card_hands import open_cards, start_card, stored_events, tick, tick_off
from playwright.sync_api import expect

pytestmark = pytest.mark.browser

SOURCES = Path(__file__).resolve().parents[2] / "site_overrides" / "assets" / "cards"


def test_no_code_can_delete_an_event():
    text = {path.name: path.read_text(encoding="utf-8") for path in SOURCES.glob("*.js")}
    assert {"store.js", "database.js"} <= set(text)
    for name, source in text.items():
        assert not re.search(r"deleteDatabase|deleteDB|deleteObjectStore", source), name
    for name in ("store.js", "database.js"):
        assert not re.search(r"\.delete\(|\.clear\(", text[name]), name
    assert re.findall(r"\.put\([^)]*\)", text["store.js"]) == [".put({ name, value })"]


@pytest.mark.parametrize(
    ("script", "words"),
    [
        (
            "Object.defineProperty(window, 'indexedDB', {value: undefined})",
            "Do not start work on a card here. This browser does not let the page store anything.",
        ),
        (
            "Object.defineProperty(window, 'isSecureContext', {value: false})",
            "Do not start work on a card here. This page was opened by an address that begins "
            "with http, so the browser gives it no safe storage.",
        ),
        (
            "IDBObjectStore.prototype.put = () => { throw new DOMException('', "
            "'QuotaExceededError'); }",
            "Do not start work on a card here. The phone has no room left for records.",
        ),
    ],
)
def test_a_phone_that_cannot_keep_records_is_told_before_work_starts(page, site_url, script, words):
    page.add_init_script(script)
    open_cards(page, site_url)
    expect(page.locator("#cards").get_by_role("alert")).to_contain_text(words)
    assert page.get_by_text("Start a card").count() == 0


def test_records_of_a_newer_version_are_left_alone(page, site_url):
    page.goto(site_url)
    page.evaluate(
        """() => new Promise((done) => {
            const opening = indexedDB.open("underhoist-cards", 99);
            opening.onsuccess = () => { opening.result.close(); done(); };
        })"""
    )
    open_cards(page, site_url)
    expect(page.locator("#cards").get_by_role("alert")).to_contain_text(
        "The records on this phone were made by a newer version of the manual."
    )


def test_a_full_phone_leaves_the_step_unconfirmed_until_it_is_stored(page, site_url):
    start_card(page, site_url, "set-band")
    page.evaluate(
        """() => {
            const add = IDBObjectStore.prototype.add;
            window.mend = () => { IDBObjectStore.prototype.add = add; };
            IDBObjectStore.prototype.add = () => {
                throw new DOMException("", "QuotaExceededError");
            };
        }"""
    )
    page.wait_for_timeout(460)
    tick(page).click()
    expect(page.locator("#cards").get_by_role("alert")).to_contain_text(
        "Not stored yet. The phone has no room left for records."
    )
    expect(tick(page)).to_have_attribute("data-state", "storing")
    expect(page.locator(".uh-tick__word")).to_have_text("Not stored yet")
    assert page.evaluate("'cardUnstored' in document.documentElement.dataset")
    assert len(stored_events(page, site_url)) == 2
    page.evaluate("window.mend()")
    page.get_by_role("button", name="Try again").click()
    expect(tick(page)).to_have_attribute("data-state", "stored")
    assert [e["kind"] for e in stored_events(page, site_url)] == ["start", "add", "tick"]
    assert not page.evaluate("'cardUnstored' in document.documentElement.dataset")


BROKEN = {
    "a handle that died while the phone slept": """
        const real = IDBDatabase.prototype.transaction;
        let left = 2;
        IDBDatabase.prototype.transaction = function (...words) {
            if (left-- > 0) throw new DOMException("closing", "InvalidStateError");
            return real.apply(this, words);
        };""",
    "a server that is lost after the event was stored": """
        const real = IDBObjectStore.prototype.get;
        let left = 1;
        IDBObjectStore.prototype.get = function (...words) {
            const isReadBack = this.name === "events" && this.transaction.mode === "readonly";
            if (isReadBack && left-- > 0) {
                throw new DOMException("Connection lost", "UnknownError");
            }
            return real.apply(this, words);
        };""",
    "a transaction that the browser aborts": """
        const real = IDBObjectStore.prototype.add;
        let left = 1;
        IDBObjectStore.prototype.add = function (...words) {
            const request = real.apply(this, words);
            if (this.name === "events" && left-- > 0) this.transaction.abort();
            return request;
        };""",
}


@pytest.mark.parametrize("script", BROKEN.values(), ids=BROKEN.keys())
def test_a_dead_connection_is_opened_anew_and_the_tick_stored_once(page, site_url, script):
    start_card(page, site_url, "set-band")
    page.evaluate(f"() => {{ {script} }}")
    tick_off(page)
    expect(page.locator(".uh-card__title")).to_have_text("Step 2 of 12")
    assert [e["kind"] for e in stored_events(page, site_url)] == ["start", "add", "tick"]


def test_an_open_that_never_answers_is_tried_again(page, site_url):
    page.add_init_script(
        """
        const real = IDBFactory.prototype.open;
        let left = 1;
        IDBFactory.prototype.open = function (...words) {
            if (left-- > 0) return new EventTarget();
            return real.apply(this, words);
        };"""
    )
    open_cards(page, site_url)
    expect(page.get_by_role("link", name="Start a card")).to_be_visible()


def test_records_cleared_under_the_page_are_put_back(page, site_url):
    start_card(page, site_url, "set-band")
    page.evaluate(
        """() => new Promise((done) => {
            indexedDB.deleteDatabase("underhoist-cards").onsuccess = () => done();
        })"""
    )
    tick_off(page)
    expect(page.locator(".uh-card__title")).to_have_text("Step 2 of 12")
    kinds = [event["kind"] for event in stored_events(page, site_url)]
    assert sorted(kinds) == ["add", "start", "tick"]
    page.reload()
    expect(page.locator(".uh-card__left")).to_have_text("Left: 11 of 12 steps.")


def test_a_tab_on_a_phone_that_clears_tabs_is_told_to_install_first(page, site_url):
    page.add_init_script("Object.defineProperty(navigator, 'standalone', {value: false})")
    open_cards(page, site_url)
    expect(page.locator("#cards").get_by_role("alert")).to_contain_text(
        "Put the manual on the home screen with Share, Add to Home Screen, and work from there."
    )


def test_the_screen_stays_on_while_a_card_is_open(page, site_url):
    page.add_init_script(
        """
        window.locks = [];
        const request = async (kind) => {
            const lock = { kind, released: false, async release() { this.released = true; } };
            window.locks.push(lock);
            return lock;
        };
        Object.defineProperty(navigator, "wakeLock", { value: { request } });"""
    )
    start_card(page, site_url, "set-band")
    assert page.evaluate("window.locks.map(({kind, released}) => [kind, released])") == [
        ["screen", False]
    ]
    page.get_by_role("link", name="All cards").click()
    page.get_by_role("link", name="Start a card").wait_for()
    assert page.evaluate("window.locks.every(({released}) => released)")
