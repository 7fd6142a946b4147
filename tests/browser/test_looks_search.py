"""The search finds pages by words, says in words what it found, and needs no mouse."""

import re

import pytest
from playwright.sync_api import Page, expect

pytestmark = pytest.mark.browser


def test_typing_finds_a_page_and_leads_to_it(page: Page, site_url: str) -> None:
    page.goto(site_url + "search.html")
    page.keyboard.type("front band")
    result = page.locator("#results a", has_text="Set the front band").first
    expect(result).to_be_visible()
    expect(page.locator("#found")).to_have_text(re.compile(r"^(One page|\d+ pages) found"))
    result.click()
    expect(page).to_have_url(site_url + "kestrel-3/set-band/")


def test_nothing_found_is_said_with_what_to_do_next(page: Page, site_url: str) -> None:
    page.goto(site_url + "search.html?q=zeppelin")
    expect(page.locator("#found")).to_have_text(
        "Nothing found for “zeppelin”. Try one word, or the trade's other word for it."
    )
    assert page.locator("#results li").count() == 0


def test_an_emptied_field_shows_nothing(page: Page, site_url: str) -> None:
    page.goto(site_url + "search.html?q=band")
    expect(page.locator("#results li").first).to_be_visible()
    page.locator("#words").fill("")
    expect(page.locator("#results li")).to_have_count(0)
    expect(page.locator("#found")).to_have_text("")


def test_the_question_stands_in_the_address(page: Page, site_url: str) -> None:
    page.goto(site_url + "search.html")
    page.locator("#words").fill("seal")
    expect(page).to_have_url(site_url + "search.html?q=seal")
    page.reload()
    expect(page.locator("#words")).to_have_value("seal")
    expect(page.locator("#results li").first).to_be_visible()


def test_an_index_that_cannot_be_read_is_said(page: Page, site_url: str) -> None:
    page.route("**/search_index.json", lambda route: route.abort())
    page.goto(site_url + "search.html?q=band")
    expect(page.locator("#found")).to_have_text(
        "The search index could not be read. "
        "Open this page once with a connection, then it is stored."
    )


def test_markup_in_the_question_stays_words(page: Page, site_url: str) -> None:
    page.goto(site_url + "search.html")
    page.locator("#words").fill("<img src=x onerror=alert(1)>")
    expect(page.locator("#found")).not_to_be_empty()
    assert page.locator("#found img, #results img").count() == 0
