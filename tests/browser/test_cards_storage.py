"""Storage that fails: what is said, and that a step is never shown as done before it is stored."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from card_hands import begun_card, open_cards, stored_events, take_time, tick, tick_off
from card_pictures import camera_photo
from playwright.sync_api import expect
from static_server import StaticServer

pytestmark = pytest.mark.browser


SOURCES = Path(__file__).resolve().parents[2] / "site_overrides" / "assets" / "cards"


def test_no_code_can_delete_or_overwrite_an_event_or_a_picture():
    text = {path.name: path.read_text(encoding="utf-8") for path in SOURCES.rglob("*.js")}
    keepers = {"store.js", "database.js", "merge.js", "summaries.js", "connection.js"}
    assert keepers <= set(text)
    for name, source in text.items():
        assert not re.search(r"deleteDatabase|deleteDB|deleteObjectStore", source), name
    for name in keepers:
        assert not re.search(r"\.delete\(|\.clear\(", text[name]), name
    put = {name: re.findall(r"\.put\([^)]*\)", text[name]) for name in keepers}
    assert {name: found for name, found in put.items() if found} == {
        "store.js": [".put({ name, value })"],
        "summaries.js": ['.put("summaries", summary)'],
    }


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
        (
            "const put = IDBObjectStore.prototype.put; IDBObjectStore.prototype.put = function "
            "(value) { return value.name === 'probe' ? this.get('probe') : "
            "put.call(this, value); }",
            "Do not start work on a card here. The phone's storage took a note and did not give "
            "it back.",
        ),
    ],
)
def test_a_phone_that_cannot_keep_records_is_told_before_work_starts(
    new_page, site_url, script, words
):
    page = new_page
    page.add_init_script(script)
    open_cards(page, site_url)
    expect(page.locator("#cards").get_by_role("alert")).to_contain_text(words)
    assert page.get_by_text("Start a card").count() == 0


def test_nothing_of_a_card_is_shown_before_its_phone_has_proved_that_it_keeps_records(
    new_page, site_url
):
    page = new_page
    card = begun_card(page, site_url, "set-band")
    page.add_init_script(
        """let done;
        globalThis.prove = () => done();
        const get = IDBObjectStore.prototype.get;
        const proved = new Promise((resolve) => { done = resolve; });
        IDBObjectStore.prototype.get = function (key) {
            const request = get.call(this, key);
            if (key !== "probe") return request;
            request.addEventListener = (kind, told) => {
                if (kind === "success") proved.then(() => told.call(request));
            };
            return request;
        };"""
    )
    page.goto("about:blank")
    page.goto(f"{site_url}cards/#card/{card}/1")
    page.wait_for_timeout(1_000)
    expect(page.locator("#cards")).to_have_text("Looking at this phone’s storage.")
    page.evaluate("prove()")
    expect(tick(page)).to_be_visible()


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
    begun_card(page, site_url, "set-band")
    page.evaluate(
        """() => {
            const add = IDBObjectStore.prototype.add;
            window.mend = () => { IDBObjectStore.prototype.add = add; };
            IDBObjectStore.prototype.add = () => {
                throw new DOMException("", "QuotaExceededError");
            };
        }"""
    )
    take_time(page)
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
    begun_card(page, site_url, "set-band")
    page.evaluate(f"() => {{ {script} }}")
    tick_off(page)
    expect(page.locator(".uh-card__title")).to_have_text("Step 2 of 12")
    assert [e["kind"] for e in stored_events(page, site_url)] == ["start", "add", "tick"]


def test_an_open_that_never_answers_is_tried_again(new_page, site_url):
    page = new_page
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
    begun_card(page, site_url, "set-band")
    page.evaluate(CLEAR)
    tick_off(page)
    expect(page.locator(".uh-card__title")).to_have_text("Step 2 of 12")
    kinds = [event["kind"] for event in stored_events(page, site_url)]
    assert sorted(kinds) == ["add", "start", "tick"]
    page.reload()
    expect(page.locator(".uh-card__left")).to_have_text("Left: 11 of 12 steps.")


def test_a_tab_on_a_phone_that_clears_tabs_is_told_to_install_first(new_page, site_url):
    page = new_page
    page.add_init_script("Object.defineProperty(navigator, 'standalone', {value: false})")
    open_cards(page, site_url)
    first = page.get_by_role("region", name="Put the manual on the home screen first")
    expect(first).to_contain_text("This phone clears a tab’s records after a week without use.")
    expect(first.get_by_role("listitem")).to_have_count(3)
    expect(first.get_by_role("listitem").nth(1)).to_have_text(
        "Choose Add to Home Screen, then Add."
    )
    expect(first).to_contain_text("A card begun in this tab stays in it.")
    page.set_viewport_size({"width": 360, "height": 640})
    assert page.evaluate("document.documentElement.scrollWidth") <= 360
    name_oneself(page, site_url)
    expect(page.get_by_role("region", name="Put the manual on the home screen")).to_be_visible()


def test_the_installed_manual_says_nothing_of_installing(new_page, site_url):
    page = new_page
    page.add_init_script("Object.defineProperty(navigator, 'standalone', {value: true})")
    page.add_init_script("navigator.storage.persisted = async () => true")
    open_cards(page, site_url)
    expect(page.get_by_role("link", name="Start a card")).to_be_visible()
    assert page.locator("#cards").get_by_role("alert").count() == 0
    assert page.locator("#cards").get_by_role("region").count() == 0


def name_oneself(page, site_url):
    """Say who one is and go on to a new card."""
    open_cards(page, site_url, "#new")
    page.get_by_label("Your initials").fill("RB")
    page.get_by_role("button", name="Keep").click()
    page.get_by_label("Unit family").wait_for()


def test_a_private_window_is_told_what_its_browser_has_not_promised(page, site_url):
    # Every context of these tests is one that the browser forgets, like a private window.
    open_cards(page, site_url)
    expect(page.locator("#cards").get_by_role("alert")).to_have_text(
        "This browser has not promised to keep records. Install the manual on the home screen, "
        "do not work in a private window, and print or share each card when it is done."
    )


def test_an_address_without_https_is_refused(browser_type, browser_type_launch_args, site):
    server = StaticServer(site)
    args = [*browser_type_launch_args["args"], "--host-resolver-rules=MAP shop.test 127.0.0.1"]
    browser = browser_type.launch(**{**browser_type_launch_args, "args": args})
    page = browser.new_page()
    open_cards(page, server.url.replace("localhost", "shop.test"))
    expect(page.locator("#cards").get_by_role("alert")).to_contain_text(
        "Do not start work on a card here. This page was opened by an address that begins with "
        "http, so the browser gives it no safe storage. Open the manual by its https address."
    )
    browser.close()
    server.stop()


def limit(page, site_url, bytes_):
    """Let the origin store no more than this, as the browser's own tools do."""
    words = {"origin": site_url.rstrip("/"), "quotaSize": bytes_}
    session = page.context.new_cdp_session(page)
    session.send("Storage.overrideQuotaForOrigin", words)
    return session


# Films on the phone: another database takes whatever room is left, to the last kilobyte.
FILL = """async () => {
    const opening = indexedDB.open("films", 1);
    opening.onupgradeneeded = () => opening.result.createObjectStore("films");
    const films = await new Promise((done) => (opening.onsuccess = () => done(opening.result)));
    const add = (size) => new Promise((done) => {
        const change = films.transaction("films", "readwrite", { durability: "strict" });
        const film = crypto.getRandomValues(new Uint8Array(size));
        change.objectStore("films").put(film, Math.random());
        change.oncomplete = () => done(true);
        change.onabort = () => done(false);
    });
    for (const size of [60_000, 8_000, 500, 10]) while (await add(size));
    films.close();
}"""

DELETE = """() => new Promise((done) => {
    indexedDB.deleteDatabase("films").onsuccess = () => done();
})"""


def test_a_phone_without_room_for_anything_is_told_before_work_starts(new_page, site_url):
    page = new_page
    session = limit(page, site_url, 1)
    open_cards(page, site_url)
    expect(page.locator("#cards").get_by_role("alert")).to_contain_text(
        "Do not start work on a card here. The phone has no room left for records."
    )
    origin = {"origin": site_url.rstrip("/")}
    session.send("Storage.overrideQuotaForOrigin", origin)
    page.get_by_role("button", name="Try again").click()
    expect(page.get_by_role("link", name="Start a card")).to_be_visible()


def test_a_phone_without_room_for_a_photo_is_warned_before_work_starts(new_page, site_url):
    page = new_page
    limit(page, site_url, 330_000)  # no photo fits; records and what writing them takes do
    open_cards(page, site_url)
    expect(page.locator("#cards").get_by_role("alert")).to_have_text(
        "The phone has little room left. Delete some photos or films before you start a card."
    )


@pytest.mark.parametrize("what", ["a tick", "a photo"])
def test_a_phone_that_fills_up_in_mid_work_confirms_only_what_is_stored(new_page, site_url, what):
    page = new_page
    _session = limit(page, site_url, 2_000_000)
    begun_card(page, site_url, "set-band")
    picture = camera_photo(page)
    page.evaluate(FILL)
    if what == "a tick":
        take_time(page)
        tick(page).click()
    else:
        page.locator(".uh-photo__take input").first.set_input_files([picture])
    trouble = page.locator("#cards").get_by_role("alert")
    expect(trouble).to_contain_text("Not stored yet. The phone has no room left for records.")
    assert [e["kind"] for e in stored_events(page, site_url)] == ["start", "add"]
    if what == "a tick":
        expect(tick(page)).to_have_attribute("data-state", "storing")
    page.evaluate(DELETE)
    page.get_by_role("button", name="Try again").click()
    page.wait_for_function("() => !('cardUnstored' in document.documentElement.dataset)")
    expect(trouble).to_have_count(0)
    assert [e["kind"] for e in stored_events(page, site_url)] == ["start", "add", what[2:]]
    if what == "a photo":
        expect(page.locator(".uh-photo__small")).to_have_count(1)
        assert page.evaluate(PICTURES, site_url) == [True]


PICTURES = """async (root) => {
    const { allEvents, pictureOf } = await import(root + "assets/cards/record/store.js");
    const photos = (await allEvents()).filter(({ kind }) => kind === "photo");
    return Promise.all(photos.map(async ({ id }) => (await pictureOf(id)) !== null));
}"""

CLEAR = """async () => {
    await caches.delete("cards of underhoist, second copy");
    await new Promise((done) => {
        indexedDB.deleteDatabase("underhoist-cards").onsuccess = () => done();
    });
}"""
"""What a browser does that needs room: everything of the site goes, the second copy too."""


def test_photos_cleared_under_the_page_are_put_back_or_named(page, site_url):
    begun_card(page, site_url, "set-band")
    photo = page.locator(".uh-photo__take input").first
    photo.set_input_files([camera_photo(page)])
    expect(page.locator(".uh-photo__small")).to_have_count(1)
    page.evaluate(CLEAR)
    tick_off(page)
    news = page.locator(".uh-card__news")
    expect(news).to_have_text(
        "The browser had cleared this phone’s records. 3 entries of this card that this page "
        "still held are back."
    )
    assert page.evaluate(PICTURES, site_url) == [True], "the page still held the picture"
    page.reload()
    expect(page.locator(".uh-card__left")).to_have_text("Left: 11 of 12 steps.")
    expect(news).to_have_text("")
    page.evaluate(CLEAR)
    tick_off(page)
    expect(news).to_have_text(
        "The browser had cleared this phone’s records. 4 entries of this card that this page "
        "still held are back. 1 photo is lost: at step 1 of Set the front band, by RB. Take it "
        "again."
    )
    assert page.evaluate(PICTURES, site_url) == [False]


def test_the_screen_stays_on_while_a_card_is_open(new_page, site_url):
    page = new_page
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
    begun_card(page, site_url, "set-band")
    assert page.evaluate("window.locks.map(({kind, released}) => [kind, released])") == [
        ["screen", False]
    ]
    page.get_by_role("link", name="All cards").click()
    page.get_by_role("link", name="Start a card").wait_for()
    assert page.evaluate("window.locks.every(({released}) => released)")
