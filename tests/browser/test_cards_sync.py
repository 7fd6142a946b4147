"""Phones that exchange their cards through a real server of the CouchDB protocol."""

from __future__ import annotations

import json
from contextlib import nullcontext

import pytest
from axe_core import findings
from card_hands import (
    begun_card,
    chain_is_whole,
    go_to,
    open_cards,
    stored_events,
    tick,
    tick_off,
)
from playwright.sync_api import expect
from shop import LAST, PASSWORD, USER, Shop, fill_in, is_exchanged, join, state

pytestmark = pytest.mark.browser


WRONG = PASSWORD.upper()


@pytest.fixture(scope="module")
def running_shop(tmp_path_factory, site_url):
    """The one server behind `shop`: starting it is more work than most of its tests."""
    server = Shop(tmp_path_factory.mktemp("shop") / "shop", site_url.rstrip("/"))
    yield server
    server.kill()


@pytest.fixture
def shop(running_shop):
    """A running server that lets this site's pages in, with nothing in its database."""
    running_shop.empty()
    return running_shop


@pytest.fixture
def own_shop(tmp_path, site_url):
    """The same for one test, which may kill it."""
    server = Shop(tmp_path / "shop", site_url.rstrip("/"))
    yield server
    server.kill()


@pytest.fixture
def phones(empty_page, other_empty_page):
    """Two phones that share nothing."""
    return [empty_page, other_empty_page]


def ids(page, site_url):
    return sorted(event["id"] for event in stored_events(page, site_url))


def exchange_now(page, site_url):
    """Exchange until nothing waits; the password is kept on this phone."""
    open_cards(page, site_url, "#sync")
    page.get_by_role("button", name="Exchange now").click()
    is_exchanged(page)


def test_two_phones_tick_while_the_server_is_killed_and_both_end_with_everything_once(
    phones, site_url, own_shop
):
    shop = own_shop
    one, other = phones
    card = begun_card(one, site_url, "set-band")
    join(one, site_url, shop, keep=True)
    is_exchanged(one)
    join(other, site_url, shop, keep=True)
    is_exchanged(other)
    open_cards(other, site_url, f"#card/{card}/1")
    other.get_by_label("Your initials").fill("SL")
    other.get_by_role("button", name="Keep").click()
    go_to(one, site_url, card, 1)
    for step in (1, 2, 3):
        with one.expect_request(f"{shop.address}/**") if step == 2 else nullcontext():
            tick_off(one)
        if step == 2:
            shop.kill()  # in the middle of an exchange
        go_to(other, site_url, card, step + 4)
        if tick(other).get_attribute("data-state") == "todo":
            tick_off(other)
        go_to(one, site_url, card, step + 1)
    shop.start()
    for phone in (one, other, one):
        exchange_now(phone, site_url)
    assert ids(one, site_url) == ids(other, site_url) == sorted(shop.documents())
    found = stored_events(one, site_url)
    assert len({event["device"] for event in found}) == 2
    assert len(found) >= 7, "start, add and what both have ticked"
    assert chain_is_whole(one, site_url)
    assert chain_is_whole(other, site_url)


def test_a_tick_on_one_phone_shows_on_the_open_card_of_the_other(phones, site_url, shop):
    one, other = phones
    card = begun_card(one, site_url, "set-band")
    join(one, site_url, shop, keep=True)
    is_exchanged(one)
    join(other, site_url, shop, keep=True)
    is_exchanged(other)
    other.evaluate("hash => { location.hash = hash; }", f"#card/{card}/1")
    other.get_by_label("Your initials").fill("SL")
    other.get_by_role("button", name="Keep").click()
    expect(tick(other)).to_have_attribute("data-state", "todo")
    go_to(one, site_url, card, 1)
    tick_off(one)
    exchange_now(one, site_url)
    # As the network's return does: the other phone asks without waiting its half minute.
    other.evaluate("() => window.dispatchEvent(new Event('online'))")
    expect(tick(other)).to_have_attribute("data-state", "stored", timeout=15_000)


def test_a_photo_follows_its_entry_to_the_other_phone(phones, site_url, shop):
    one, other = phones
    card = begun_card(one, site_url, "set-band")
    kept = store_photo(one, site_url, card)
    join(one, site_url, shop)
    is_exchanged(one)
    assert f"photo:{kept['id']}" in shop.documents()
    join(other, site_url, shop)
    is_exchanged(other)
    digest = other.evaluate(
        """async ([root, id]) => {
            const { pictureOf } = await import(root + "assets/cards/record/store.js");
            const content = await (await pictureOf(id)).arrayBuffer();
            const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", content));
            return Array.from(digest, (byte) => byte.toString(16).padStart(2, "0")).join("");
        }""",
        [site_url, kept["id"]],
    )
    assert digest == kept["sha256"]


def store_photo(page, site_url, card):
    """Take a small photo on the first step, as the working view's own modules do."""
    return page.evaluate(
        """async ([root, card]) => {
            const { append } = await import(root + "assets/cards/record/store.js");
            const { draft } = await import(root + "assets/cards/record/events.js");
            const canvas = new OffscreenCanvas(40, 30);
            canvas.getContext("2d").fillRect(5, 5, 20, 10);
            const blob = await canvas.convertToBlob({ type: "image/jpeg" });
            const content = await blob.arrayBuffer();
            const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", content));
            const hex = (byte) => byte.toString(16).padStart(2, "0");
            const sha256 = Array.from(digest, hex).join("");
            const value = { job: "", step: 0, finding: "", type: blob.type, width: 40, height: 30,
                            bytes: content.byteLength, sha256 };
            const made = draft({ card, who: "RB", kind: "photo", value });
            const event = await append(made, 0, { type: blob.type, content });
            return { id: event.id, sha256 };
        }""",
        [site_url, card],
    )


def test_what_others_do_on_the_server_changes_nothing_on_the_phone(page, site_url, shop):
    begun_card(page, site_url, "set-band")
    join(page, site_url, shop, keep=True)
    is_exchanged(page)
    before = stored_events(page, site_url)
    first, second = (shop.documents()[event["id"]] for event in before)
    shop.delete(first)
    shop.put({**second, "who": "XX"})
    exchange_now(page, site_url)
    assert stored_events(page, site_url) == before
    shown = page.locator(".uh-exchange li")
    expect(shown).to_have_count(2)
    expect(page.locator(".uh-exchange")).to_contain_text(
        "An entry (start by RB) was deleted on the server. It stays on this phone."
    )
    expect(page.locator(".uh-exchange")).to_contain_text(
        "An entry from the server (add by XX): It was changed after it was made"
    )


def test_a_phone_without_the_server_works_on_and_says_so(page, site_url, own_shop):
    shop = own_shop
    card = begun_card(page, site_url, "set-band")
    join(page, site_url, shop, keep=True)
    is_exchanged(page)
    shop.kill()
    go_to(page, site_url, card, 1)
    tick_off(page)
    assert [event["kind"] for event in stored_events(page, site_url)][-1] == "tick"
    open_cards(page, site_url, "#sync")
    page.get_by_role("button", name="Exchange now").click()
    expect(page.get_by_role("alert")).to_contain_text("The server does not answer.")
    expect(page.get_by_role("alert")).to_contain_text("is tried again by itself.")
    expect(state(page)).to_contain_text("1 entry waits.")
    shop.start()
    exchange_now(page, site_url)
    assert sorted(shop.documents()) == ids(page, site_url)


TROUBLES = [
    (403, "{}", "This user may not use this database."),
    (503, "{}", "The server has a fault of its own."),
    (404, '{"error":"not_found"}', "There is no such database"),
    (429, "{}", "The server has too much to do."),
    (200, "<!doctype html>Sign in", "Something else answered"),
    (200, '{"db_name":"ca', "The server’s answer was cut off"),
    (200, '{"status":"up"}', "does not speak the CouchDB protocol"),
]
"""What a server answers with, and what is said of it."""


def test_each_trouble_is_a_sentence_that_says_what_to_do(page, site_url, shop):
    allowed = {
        "Access-Control-Allow-Origin": "*",
        "Access-Control-Allow-Headers": "*, authorization",
    }
    answer = {}
    page.route(f"{shop.address}/**", lambda route: route.fulfill(headers=allowed, **answer))
    for status, body, words in TROUBLES:
        answer |= {"status": status, "body": body}
        page.goto("about:blank")  # the password is not kept: it is asked for again
        join(page, site_url, shop)
        expect(page.get_by_role("alert")).to_contain_text(words)


def test_a_server_that_shuts_the_manual_out_is_told_from_one_that_is_not_there(
    new_page, site_url, shop
):
    shut_out = site_url.replace("localhost", "127.0.0.1")  # the same site, of another origin
    join(new_page, shut_out, shop)
    expect(new_page.get_by_role("alert")).to_contain_text("does not let this manual in.")
    expect(new_page.get_by_role("alert")).to_contain_text(shut_out.rstrip("/"))


def test_a_wrong_password_is_said_and_can_be_entered_again(page, site_url, shop):
    begun_card(page, site_url, "set-band")
    join(page, site_url, shop, password=WRONG)
    expect(page.get_by_role("alert")).to_contain_text("does not take this user and password")
    expect(page.get_by_label("Address of the server")).to_have_value(shop.address)
    page.get_by_label("Password", exact=True).fill(PASSWORD)
    page.get_by_role("button", name="Start to exchange").click()
    is_exchanged(page)


def test_the_password_stays_only_where_the_person_says_so_and_never_in_an_address(
    new_page, site_url, shop
):
    page = new_page
    asked, said = [], []
    page.on("request", lambda request: asked.append(request))  # noqa: PLW0108
    page.on("console", lambda message: said.append(message.text))
    join(page, site_url, shop)
    expect(state(page)).to_have_text(LAST)
    assert PASSWORD not in everything_kept(page)
    away = [each for each in asked if not each.url.startswith(site_url)]
    assert away and all(each.url.startswith(f"{shop.address}/cards") for each in away)
    secret = {PASSWORD, PASSWORD.replace(" ", "%20"), PASSWORD.replace(" ", "+")}
    assert not any(word in each.url for each in asked for word in secret)
    assert not any(PASSWORD in text for text in said)
    page.reload()
    page.wait_for_selector("#cards[data-ready]")
    expect(state(page)).to_have_text("Nothing waits. Enter the password to go on.")
    fill_in(page, shop.address, keep=True)
    is_exchanged(page)
    assert PASSWORD in everything_kept(page)
    page.get_by_role("button", name="Stop exchanging").click()
    expect(state(page)).to_have_text("This phone exchanges nothing with other phones.")
    kept = everything_kept(page)
    assert PASSWORD not in kept
    assert USER not in kept
    assert shop.address not in kept


def everything_kept(page):
    """All that the page's databases and other stores hold, as text."""
    return json.dumps(
        page.evaluate(
            """async () => {
                const kept = [{ ...localStorage }, { ...sessionStorage }, document.cookie];
                for (const { name } of await indexedDB.databases()) {
                    const opening = indexedDB.open(name);
                    const database = await new Promise((done) => {
                        opening.onsuccess = () => done(opening.result);
                    });
                    for (const store of database.objectStoreNames) {
                        const asking = database.transaction(store).objectStore(store).getAll();
                        kept.push(await new Promise((done) => {
                            asking.onsuccess = () => done(asking.result);
                        }));
                    }
                    database.close();
                }
                return kept;
            }"""
        )
    )


def test_a_phone_that_has_not_joined_asks_nobody(new_page, site_url):
    page = new_page
    asked = []
    page.on("request", lambda request: asked.append(request.url))
    page.clock.install()
    begun_card(page, site_url, "set-band")
    open_cards(page, site_url, "#sync")
    expect(state(page)).to_have_text("This phone exchanges nothing with other phones.")
    page.clock.fast_forward("01:00:00")
    page.evaluate("() => fetch(location.href).then(() => {})")  # asked after whatever else was
    assert all(url.startswith(site_url) for url in asked)
    names = page.evaluate("indexedDB.databases().then((all) => all.map(({ name }) => name))")
    assert "underhoist-shop" not in names


def test_the_way_to_the_guide_leads_to_it(page, site_url):
    open_cards(page, site_url, "#")
    page.get_by_role("link", name="Shop exchange").click()
    page.get_by_role("link", name="How a shop sets it up").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Exchange cards in the shop")


def test_axe_finds_nothing_on_the_shop_exchange(page, site_url, shop):
    open_cards(page, site_url, "#sync")
    assert findings(page) == [], "off"
    page.get_by_role("button", name="Start to exchange").click()
    assert findings(page) == [], "the form with errors"
    join(page, site_url, shop, password=WRONG)
    expect(page.get_by_role("alert")).to_be_visible()
    assert findings(page) == [], "a trouble"
    fill_in(page, shop.address)
    is_exchanged(page)
    assert findings(page) == [], "on"
