"""What a browser's database loses comes back from the second copy, and nobody is asked for it."""

from __future__ import annotations

import contextlib
import os
import sys

import pytest
from card_hands import (
    COPY,
    LOSE,
    begun_card,
    chain_is_whole,
    on_the_site,
    open_cards,
    stored_events,
    tick,
    tick_off,
)
from card_pictures import camera_photo
from killed_browser import KilledBrowser
from playwright.sync_api import Error, expect

pytestmark = pytest.mark.browser


KINDS = f"""async () => (await (await caches.open("{COPY}")).keys())
    .map(({{ url }}) => new URL(url).pathname.split("/").at(-2)).sort()"""
BEFORE_COPIES = f"""async (root) => {{
    const {{ withDatabase }} = await import(root + "assets/cards/record/database.js");
    await withDatabase((database) => database.delete("device", "second copy"));
    await caches.delete("{COPY}");
}}"""
PICTURE = """async (root) => {
    const { allEvents, pictureOf } = await import(root + "assets/cards/record/store.js");
    const { id, value } = (await allEvents()).find(({ kind }) => kind === "photo");
    const picture = await pictureOf(id);
    const bytes = await crypto.subtle.digest("SHA-256", await picture.arrayBuffer());
    const hash = [...new Uint8Array(bytes)].map((byte) => byte.toString(16).padStart(2, "0"));
    return [picture.type, hash.join("") === value.sha256];
}"""
BACK = "This phone’s browser had lost its records. {} entries are back, from the second copy."


def lost(page, site_url):
    """Lose the database, where no page of the cards holds anything of it."""
    on_the_site(page, site_url)
    page.evaluate(LOSE, "underhoist-cards")


def test_a_lost_database_comes_back_with_all_that_was_stored(page, site_url):
    card = begun_card(page, site_url, "set-band")
    page.locator(".uh-photo__take input").first.set_input_files([camera_photo(page)])
    expect(page.locator(".uh-photo__small")).to_have_count(1)
    tick_off(page)
    expect(page.locator(".uh-card__title")).to_have_text("Step 2 of 12")
    before = stored_events(page, site_url)
    lost(page, site_url)

    open_cards(page, site_url)
    expect(page.locator("#cards").get_by_role("alert")).to_have_text(BACK.format(4))
    assert stored_events(page, site_url) == before
    assert page.evaluate(PICTURE, site_url) == ["image/jpeg", True]
    open_cards(page, site_url, f"#card/{card}/2")
    tick_off(page)
    expect(page.locator(".uh-card__left")).to_have_text("Left: 10 of 12 steps.")
    assert chain_is_whole(page, site_url)
    after = stored_events(page, site_url)
    assert len({event["device"] for event in after}) == 2, "no number is given twice"
    open_cards(page, site_url)
    assert "second copy" not in page.locator("#cards").inner_text()


def test_records_from_before_there_was_a_copy_are_copied_once(page, site_url):
    begun_card(page, site_url, "set-band")
    page.locator(".uh-photo__take input").first.set_input_files([camera_photo(page)])
    expect(page.locator(".uh-photo__small")).to_have_count(1)
    page.evaluate(BEFORE_COPIES, site_url)
    assert page.evaluate(KINDS) == []
    open_cards(page, site_url)
    expect(page.get_by_role("link", name="Start a card")).to_be_visible()
    assert page.evaluate(KINDS) == ["events", "memos", "photos"]
    before = stored_events(page, site_url)
    lost(page, site_url)
    open_cards(page, site_url)
    expect(page.locator("#cards").get_by_role("alert")).to_have_text(BACK.format(len(before)))
    assert stored_events(page, site_url) == before


@pytest.mark.parametrize(
    "trouble",
    [
        "Object.defineProperty(window, 'caches', {value: undefined})",
        "CacheStorage.prototype.open = async () => { throw new DOMException('no', 'DataError'); }",
        "Cache.prototype.put = async () => { throw new DOMException('no', 'QuotaExceededError'); }",
    ],
)
def test_a_browser_that_takes_no_copy_still_keeps_the_record(new_page, site_url, trouble):
    page = new_page
    page.add_init_script(trouble)
    begun_card(page, site_url, "set-band")
    tick_off(page)
    expect(page.locator(".uh-card__title")).to_have_text("Step 2 of 12")
    page.reload()
    expect(page.locator(".uh-card__left")).to_have_text("Left: 11 of 12 steps.")


def test_a_damaged_entry_of_the_copy_keeps_no_other_away(page, site_url):
    begun_card(page, site_url, "set-band")
    tick_off(page)
    expect(page.locator(".uh-card__title")).to_have_text("Step 2 of 12")
    before = stored_events(page, site_url)
    lost(page, site_url)
    page.evaluate(
        f"""async (id) => {{
            const copy = await caches.open("{COPY}");
            const key = (await copy.keys()).find(({{ url }}) => url.endsWith(id));
            await copy.put(key, new Response("{{"));
        }}""",
        before[-1]["id"],
    )
    open_cards(page, site_url)
    expect(page.locator("#cards").get_by_role("alert")).to_have_text(BACK.format(2))
    assert stored_events(page, site_url) == before[:-1]


def torn(profile):
    """Tear the last entry of the browser's database, as when its process dies while it writes."""
    [folder] = profile.glob("Default/IndexedDB/*.leveldb")
    log = max(folder.glob("*.log"))
    os.truncate(log, log.stat().st_size - 100)


@pytest.mark.skipif(sys.platform != "linux", reason="finds the browser's processes in /proc")
def test_a_database_that_the_browser_takes_for_damaged_comes_back(playwright, tmp_path, site_url):
    phone = KilledBrowser(playwright, tmp_path / "profile")
    _, page = phone.launch()
    card = begun_card(page, site_url, "set-band")
    expect(tick(page)).to_be_visible()
    phone.kill()
    torn(phone.profile)

    _, page = phone.launch()
    open_cards(page, site_url, f"#card/{card}/1")
    tick_off(page)
    expect(page.locator(".uh-card__title")).to_have_text("Step 2 of 12")
    before = stored_events(page, site_url)
    phone.kill()

    context, page = phone.launch()
    open_cards(page, site_url)
    expect(page.locator("#cards").get_by_role("alert")).to_have_text(BACK.format(len(before)))
    assert stored_events(page, site_url) == before
    assert chain_is_whole(page, site_url)
    with contextlib.suppress(Error):
        context.close()
