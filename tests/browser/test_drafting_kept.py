"""Drafts are never lost: reload, crash, two windows, an update of the manual, a full device."""

from __future__ import annotations

import json
import re
import sys

import pytest
from card_hands import LOSE
from draft_answers import drafted_at_the_desk
from draft_hands import (
    BAND,
    WARNING,
    WITHOUT_PYTHON,
    begin_change,
    begin_page,
    open_drafting,
    stored,
    text_field,
    write,
)
from killed_browser import KilledBrowser
from playwright.sync_api import expect

pytestmark = pytest.mark.browser

ROOM = "IDBObjectStore.prototype.put"
FULL = f"{ROOM} = () => {{ throw new DOMException('', 'QuotaExceededError'); }}"


def window(context):
    """A window in which Python never comes up: what is written is kept without it."""
    page = context.new_page()
    page.add_init_script(WITHOUT_PYTHON)
    return page


@pytest.fixture
def page(context):
    return window(context)


def state(page):
    return page.locator(".uh-desk__state")


def test_a_draft_survives_a_reload_at_once(page, site_url):
    begin_change(page, site_url)
    text = text_field(page).input_value() + "\nThe last words before the reload.\n"
    text_field(page).fill(text)
    page.reload()
    expect(text_field(page)).to_have_value(text)


def test_nothing_is_called_stored_before_it_is(page, site_url):
    begin_change(page, site_url)
    page.evaluate(f"() => {{ window.put = {ROOM}; {FULL}; }}")
    text_field(page).fill("much")
    expect(state(page)).to_have_text(
        "Not stored yet. The phone has no room left for records. Delete some photos or films, "
        "then try again."
    )
    page.evaluate(f"() => {{ {ROOM} = window.put; }}")
    stored(page)
    page.reload()
    expect(text_field(page)).to_have_value("much")


@pytest.mark.parametrize(
    ("script", "words"),
    [
        (
            "Object.defineProperty(window, 'indexedDB', {value: undefined})",
            "Do not write here. This browser does not let the page store anything.",
        ),
        (FULL, "Do not write here. The phone has no room left for records."),
    ],
)
def test_a_device_that_cannot_keep_drafts_says_so_before_writing(page, site_url, script, words):
    page.add_init_script(script)
    open_drafting(page, site_url)
    expect(page.locator("#drafts").get_by_role("alert")).to_contain_text(words)
    assert page.get_by_text("Write a new page").count() == 0


def test_a_window_that_promises_nothing_says_so_before_writing(page, site_url):
    open_drafting(page, site_url)
    expect(page.locator("#drafts").get_by_role("alert")).to_contain_text(WARNING)


def test_a_second_window_reads_until_it_asks_to_write(context, site_url):
    first, second = window(context), window(context)
    way = begin_change(first, site_url)
    write(first, "from the first")
    open_drafting(second, site_url, way)
    expect(second.get_by_role("alert")).to_contain_text("This draft is open in another window")
    assert text_field(second).evaluate("field => field.readOnly")
    text_field(first).fill("the first's last words")
    second.get_by_role("button", name="Write here instead").click()
    expect(text_field(second)).to_have_value("the first's last words")
    assert not text_field(second).evaluate("field => field.readOnly")
    expect(first.get_by_role("alert")).to_contain_text("This draft is open in another window")
    assert text_field(first).evaluate("field => field.readOnly")
    write(second, "from the second")
    second.reload()
    expect(text_field(second)).to_have_value("from the second")


def test_without_locks_nothing_is_overwritten_unseen(context, site_url):
    context.add_init_script("Object.defineProperty(navigator, 'locks', {value: undefined})")
    first, second = window(context), window(context)
    way = begin_change(first, site_url)
    open_drafting(second, site_url, way)
    expect(text_field(second)).to_be_visible()
    write(first, "from the first")
    text_field(second).fill("from the second")
    expect(second.get_by_role("alert")).to_contain_text("Another window changed this draft")
    second.get_by_role("button", name="Show the other text").click()
    expect(text_field(second)).to_have_value("from the first")
    second.get_by_role("button", name="Earlier texts").click()
    item = second.locator(".uh-desk__asked li", has_text="written in another window")
    item.get_by_role("button", name="Go back to this").click()
    expect(text_field(second)).to_have_value("from the second")


def test_an_earlier_text_is_taken_back_and_the_later_one_is_kept(page, site_url):
    begin_change(page, site_url)
    original = text_field(page).input_value()
    write(page, "all of it gone by mistake")
    page.get_by_role("button", name="Earlier texts").click()
    page.get_by_role("button", name="Go back to this").last.click()
    expect(text_field(page)).to_have_value(original)
    stored(page)
    page.get_by_role("button", name="Earlier texts").click()
    expect(page.locator(".uh-desk__asked pre").first).to_have_text("all of it gone by mistake")


def test_a_deleted_draft_asks_first_and_can_be_brought_back(page, site_url):
    begin_page(page, site_url, "Set the rear band")
    write(page, "---\ntitle: Rear\n---\nprecious")
    page.get_by_role("button", name="Delete", exact=True).click()
    expect(page.locator(".uh-desk__asked")).to_contain_text("Delete this draft?")
    page.get_by_role("button", name="Delete the draft").click()
    expect(page.get_by_role("heading", name="Deleted drafts")).to_be_visible()
    page.get_by_role("button", name="Bring back").click()
    page.get_by_role("link", name="Rear").click()
    expect(text_field(page)).to_have_value("---\ntitle: Rear\n---\nprecious")


def test_drafts_that_the_browsers_database_lost_come_back(page, site_url):
    ways = [begin_change(page, site_url), begin_page(page, site_url, "Set the rear band")]
    write(page, "---\ntitle: Rear\n---\nprecious")
    stored(page)
    page.goto(f"{site_url}offline/")
    page.evaluate(LOSE, "underhoist-drafts")
    open_drafting(page, site_url, ways[1])
    expect(text_field(page)).to_have_value("---\ntitle: Rear\n---\nprecious")
    open_drafting(page, site_url, ways[0])
    expect(text_field(page)).to_have_value(re.compile("Set the front band"))


@pytest.fixture
def overtaken(page, site_url):
    """The address of a draft whose page has changed in the manual since it was begun."""
    way = begin_change(page, site_url)
    write(page, text_field(page).input_value() + "\nMine.\n")
    expect(page.locator(".uh-desk__news")).to_have_count(0)

    def changed(route):
        manual = json.loads(route.fetch().text())
        manual["pages"][BAND] += "\nOf the manual.\n"
        route.fulfill(body=json.dumps(manual))

    page.context.route("**/drafting/manual.json", changed)
    return way


def test_a_page_that_changed_in_the_manual_is_announced_until_that_was_seen(
    page, site_url, overtaken
):
    open_drafting(page, site_url, overtaken)
    news = page.locator(".uh-desk__news")
    expect(news).to_contain_text("The manual’s page has changed since this draft was begun.")
    expect(text_field(page)).to_have_value(re.compile(r"\nMine\.\n$"))
    news.get_by_role("button", name="Keep my text").click()
    expect(news).to_have_count(0)
    stored(page)
    open_drafting(page, site_url, overtaken)
    expect(text_field(page)).to_have_value(re.compile(r"\nMine\.\n$"))
    expect(news).to_have_count(0)


def test_what_changed_in_the_manual_is_shown_beside_the_draft(
    context, site, site_url, overtaken, tmp_path
):
    page = context.new_page()
    drafted_at_the_desk(page, site, tmp_path)
    open_drafting(page, site_url, overtaken)
    news = page.locator(".uh-desk__news")
    news.get_by_role("button", name="Show both").click()
    expect(news.get_by_label("What changed in the manual")).to_contain_text("+Of the manual.")
    expect(news.get_by_label("The manual’s page now")).to_contain_text("Of the manual.")
    expect(text_field(page)).to_have_value(re.compile(r"\nMine\.\n$"))


def launched(browser):
    """The browser started; returns its context and a page."""
    context, page = browser.launch()
    context.add_init_script(WITHOUT_PYTHON)
    return context, page


def hear(message, said):
    """Note the word that the page called stored."""
    if message.startswith("stored "):
        said.append(int(message.split()[1]))


@pytest.mark.skipif(sys.platform != "linux", reason="finds the browser's processes in /proc")
def test_what_was_shown_as_stored_is_there_after_the_browser_is_killed(
    playwright, tmp_path, site_url
):
    browser = KilledBrowser(playwright, tmp_path / "profile")
    context, page = launched(browser)
    way = begin_change(page, site_url)
    for round_ in range(4):
        said: list[int] = []
        page.on("console", lambda message, said=said: hear(message.text, said))
        page.evaluate(WRITE_ON, round_)
        while len(said) <= round_:
            page.wait_for_event("console")
        browser.kill()
        last = max(said)
        context, page = launched(browser)
        open_drafting(page, site_url, way)
        found = re.search(rf"round {round_} word (\d+)$", text_field(page).input_value())
        assert found and int(found[1]) >= last
    context.close()


# Writes a word every 20 ms and says which were there when the page called them stored.
WRITE_ON = """(round) => {
    const field = document.querySelector("#draft-text");
    const state = document.querySelector(".uh-desk__state");
    let word = 0;
    let isBegun = false;
    new MutationObserver(() => {
        if (state.dataset.state === "stored" && isBegun) console.log("stored " + word);
    }).observe(state, { attributes: true, childList: true });
    setInterval(() => {
        if (word % 30 === 29 && state.dataset.state !== "stored") return;
        isBegun = true;
        word += 1;
        field.value = "round " + round + " word " + word;
        field.dispatchEvent(new Event("input"));
    }, 20);
}"""
