"""A card on two phones: a file is taken in after a look, or refused where it is not sound."""

from __future__ import annotations

import json
import re

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
    turn_to,
)
from playwright.sync_api import expect

pytestmark = pytest.mark.browser


@pytest.fixture
def second(other_empty_page):
    """Another phone."""
    return other_empty_page


def saved(page, site_url, card, path):
    """Save the card's file through the page; returns the path."""
    open_cards(page, site_url, f"#card/{card}/share")
    with page.expect_download() as download:
        page.get_by_role("button", name="Save the file").click()
    download.value.save_as(path)
    return path


def choose(page, site_url, path):
    """Choose a file on the page that takes one in."""
    open_cards(page, site_url, "#take-in")
    page.reload()
    page.get_by_label("The file from the other phone").set_input_files(path)


def take_in(page, site_url, path, button="Take it in"):
    """Take a file in and wait until it is stored."""
    choose(page, site_url, path)
    page.get_by_role("button", name=button).click()
    expect(page.get_by_role("link", name="Open the card")).to_be_focused()


def name_oneself(page, site_url, initials):
    """Tell the second phone who works on it."""
    open_cards(page, site_url, "#new")
    page.get_by_label("Your initials").fill(initials)
    page.get_by_role("button", name="Keep").click()
    page.get_by_label("Unit family").wait_for()


def test_two_phones_at_once_end_with_the_same_card(page, second, site_url, tmp_path):
    card = begun_card(page, site_url, "set-band")
    tick_off(page)
    name_oneself(second, site_url, "SL")
    choose(second, site_url, saved(page, site_url, card, tmp_path / "one.json"))
    offer = second.locator("#cards")
    expect(offer).to_contain_text("The card is new to this phone. The file holds 3 entries by RB.")
    assert stored_events(second, site_url) == [], "nothing is stored before it is asked for"
    second.get_by_role("button", name="Take it in").click()
    expect(offer).to_contain_text("Stored: 3 entries.")
    second.get_by_role("link", name="Open the card").click()

    for phone, step in [(page, 2), (second, 3)]:
        go_to(phone, site_url, card, step)
        tick_off(phone)
    first_file = saved(page, site_url, card, tmp_path / "first.json")
    second_file = saved(second, site_url, card, tmp_path / "second.json")
    take_in(page, site_url, second_file, "Add it to the card")
    take_in(second, site_url, first_file, "Add it to the card")
    by_id = [{e["id"]: e for e in stored_events(each, site_url)} for each in (page, second)]
    assert by_id[0] == by_id[1]
    assert {e["who"] for e in by_id[0].values()} == {"RB", "SL"}
    for phone in (page, second):
        assert chain_is_whole(phone, site_url)
        open_cards(phone, site_url, f"#card/{card}/sheet")
        expect(phone.locator(".uh-card__sheet")).to_contain_text("Left: 9 of 12 steps.")
        said = phone.locator(".uh-card__line", has_text="Done by SL")
        expect(said).to_contain_text("3. Loosen the locknut")
    again = [saved(each, site_url, card, tmp_path / "again.json") for each in (page,)]
    other = saved(second, site_url, card, tmp_path / "other.json")
    assert again[0].read_bytes() == other.read_bytes(), "the same card has the same bytes"


def test_taking_a_file_in_again_changes_nothing(page, site_url, tmp_path):
    card = begun_card(page, site_url, "set-band")
    path = saved(page, site_url, card, tmp_path / "card.json")
    choose(page, site_url, path)
    expect(page.locator("#cards")).to_contain_text(
        "The card is on this phone already. The file holds 2 entries by RB. "
        "Nothing of it is new here."
    )
    before = stored_events(page, site_url)
    page.get_by_role("button", name="Add it to the card").click()
    expect(page.locator("#cards")).to_contain_text("Stored: 0 entries.")
    assert stored_events(page, site_url) == before


def test_the_share_sheet_is_used_where_it_takes_files(new_page, site_url):
    page = new_page
    page.add_init_script(
        """
        navigator.canShare = ({ files }) => files.every(({ type }) => type === "text/plain");
        navigator.share = async ({ files }) => {
            window.shared = { name: files[0].name, text: await files[0].text() };
        };"""
    )
    card = begun_card(page, site_url, "set-band")
    open_cards(page, site_url, f"#card/{card}/share")
    page.get_by_role("button", name="Share the file").click()
    expect(page.get_by_text("Handed to the share sheet.")).to_be_visible()
    shared = page.evaluate("window.shared")
    assert re.fullmatch(r"card-\d{4}-\d\d-\d\d-marlow-drover-green\.txt", shared["name"])
    assert json.loads(shared["text"])["format"] == "underhoist-card"


def refused(page, site_url, path, words):
    """Choose the file; it is refused with these words, and nothing of it is stored."""
    before = stored_events(page, site_url)
    choose(page, site_url, path)
    expect(page.locator("#cards").get_by_role("alert")).to_have_text(
        f"This file was not taken in. {words} Nothing was stored."
    )
    assert page.get_by_role("button", name="Take it in").count() == 0
    assert stored_events(page, site_url) == before


@pytest.fixture
def card_file(page, site_url, tmp_path):
    """A sound file, to be spoiled; its card is on the phone."""
    card = begun_card(page, site_url, "set-band")
    return json.loads(saved(page, site_url, card, tmp_path / "card.json").read_text("utf-8"))


def test_files_that_are_not_sound_are_refused_with_what_is_wrong(
    page, second, site_url, card_file, tmp_path
):
    path = tmp_path / "spoiled.json"
    open_cards(second, site_url)
    card_file["events"][0]["value"]["complaint"] = "Nothing at all"
    path.write_text(json.dumps(card_file), "utf-8")
    words = "It was changed after it was made: its hash does not fit. Ask for the file again."
    refused(second, site_url, path, f"Entry 1 (start by RB): {words}")
    path.write_text('{"invoice": 12}', "utf-8")
    words = "This is not a card of this manual: nothing in it says underhoist-card."
    refused(second, site_url, path, f"{words} Another program made it.")
    path.write_bytes(b"\x00" * 40_000_001)
    refused(second, site_url, path, "The file has 40.0 MB. A card’s file has 40.0 MB at most.")


def test_an_entry_that_contradicts_one_on_the_phone_is_refused_whole(
    page, site_url, card_file, tmp_path
):
    card_file["events"] = page.evaluate(
        """async ([root, events]) => {
            const { hashOf } = await import(root + "assets/cards/record/canonical.js");
            const [start, add] = events;
            start.value.complaint = "Nothing at all";
            for (const event of [start, add]) {
                const { hash, ...body } = event;
                event.hash = await hashOf(body);
                if (event === start) add.previous = event.hash;
            }
            return events;
        }""",
        [site_url, card_file["events"]],
    )
    path = tmp_path / "other.json"
    path.write_text(json.dumps(card_file), "utf-8")
    words = "The same entry is on this phone with other contents. One of the two was changed."
    refused(page, site_url, path, f"Entry 1 (start by RB): {words}")


def test_a_clash_found_while_storing_leaves_nothing_half_stored(page, site_url, card_file):
    result = page.evaluate(
        """async ([root, events]) => {
            const { takeIn } = await import(root + "assets/cards/record/merge.js");
            const [start, add] = structuredClone(events);
            const fresh = { ...start, id: crypto.randomUUID(), sequence: 99 };
            const second = { ...add, id: crypto.randomUUID() };
            const taken = await takeIn([fresh, second]);
            return [taken.events, taken.clash?.kind, taken.clash?.event.id === second.id];
        }""",
        [site_url, card_file["events"]],
    )
    assert result == [0, "place", True]
    assert len(stored_events(page, site_url)) == 2


def test_a_full_phone_takes_in_nothing_and_says_so(page, second, site_url, tmp_path):
    card = begun_card(page, site_url, "set-band")
    path = saved(page, site_url, card, tmp_path / "card.json")
    choose(second, site_url, path)
    second.get_by_role("button", name="Take it in").wait_for()
    second.evaluate(
        """() => {
            const add = IDBObjectStore.prototype.add;
            let left = 1;
            IDBObjectStore.prototype.add = function (...words) {
                if (left-- > 0) return add.apply(this, words);
                throw new DOMException("", "QuotaExceededError");
            };
        }"""
    )
    second.get_by_role("button", name="Take it in").click()
    expect(second.locator("#cards").get_by_role("alert")).to_have_text(
        "The file could not be stored. The phone has no room left for records. Delete some photos "
        "or films, then try again. Nothing was stored."
    )
    assert stored_events(second, site_url) == []


MARKUP = """() => [...document.querySelectorAll("#cards *")].filter((one) =>
    ["script", "iframe", "u"].includes(one.localName) ||
    [...one.attributes].some(({ name, value }) => /^on|^srcdoc$/.test(name) ||
        /elsewhere\\.example/.test(value) ||
        (name === "href" && !/^(#|https?:|blob:)/.test(value))),
).map((one) => one.outerHTML)"""


def test_markup_from_a_file_is_shown_and_not_run(page, new_page, site_url, tmp_path):
    second = new_page
    begun_card(page, site_url, "set-band")
    card = page.evaluate(
        """async (root) => {
            const { append } = await import(root + "assets/cards/record/store.js");
            const { draft } = await import(root + "assets/cards/record/events.js");
            const text = await (await fetch(root + "cards/data/set-band.json")).json();
            text.steps[0].html = `<p class="uh-step__do">Safe <img src="x" onerror="window.ran=1">
                <script>window.ran=2</script><svg onload="window.ran=3"><path d="M0 0"/></svg>
                <a href="javascript:window.ran=4">one</a><a href="https://elsewhere.example/">two</a>
                <iframe srcdoc="<script>parent.ran=5</script>"></iframe></p>`;
            text.title = "<img src=x onerror=window.ran=6>";
            const card = crypto.randomUUID();
            const vehicle = { family: "kestrel-3", family_title: "<u>K</u>", tyre: "", axle: "",
                identification: "<img src=x onerror=window.ran=7>", odometer: "1 km" };
            const does = (kind, value) => append(draft({ card, who: "RB", kind, value }));
            await does("start", { vehicle, complaint: "<svg onload=window.ran=8>", fault: "" });
            await does("add", { procedure: text });
            return card;
        }""",
        site_url,
    )
    path = saved(page, site_url, card, tmp_path / "card.json")
    name_oneself(second, site_url, "SL")
    elsewhere = []
    second.on("request", lambda request: elsewhere.append(request.url))
    take_in(second, site_url, path)
    for part in ("", "/sheet", "/share", "/fetch", "/close", "/jobs", "/owner", "/parts"):
        turn_to(second, f"#card/{card}{part}")
        assert second.evaluate(MARKUP) == [], part
        assert second.evaluate("window.ran") is None, part
    open_cards(second, site_url, f"#card/{card}")
    second.locator(".uh-card__do").get_by_text("one").click()
    assert second.evaluate("window.ran") is None
    assert all(url.startswith((site_url, "blob:")) for url in elsewhere)
    expect(second.locator(".uh-card__name")).to_contain_text("<img src=x onerror=window.ran=7>")


def test_entries_that_are_missing_between_are_said(page, second, site_url, tmp_path):
    card = begun_card(page, site_url, "set-band")
    tick_off(page)
    tick_off(page)
    held = json.loads(saved(page, site_url, card, tmp_path / "card.json").read_text("utf-8"))
    assert held["elsewhere"] == []
    del held["events"][2]
    path = tmp_path / "gap.json"
    path.write_text(json.dumps(held), "utf-8")
    take_in(second, site_url, path)
    expect(second.locator("#cards").get_by_role("alert")).to_have_text(
        "1 entry between those of one phone is missing. Ask for the card’s file again from the "
        "phone that has them all."
    )
    take_in(second, site_url, tmp_path / "card.json", "Add it to the card")
    assert second.locator("#cards").get_by_role("alert").count() == 0


def test_work_on_another_card_is_no_gap_even_on_a_third_phone(page, second, site_url, tmp_path):
    card = begun_card(page, site_url, "set-band")
    begun_card(page, site_url, "set-band")
    go_to(page, site_url, card, 1)
    tick_off(page)
    first = saved(page, site_url, card, tmp_path / "first.json")
    device = stored_events(page, site_url)[0]["device"]
    runs = [{"device": device, "from": 3, "to": 4}]
    assert json.loads(first.read_text("utf-8"))["elsewhere"] == runs
    name_oneself(second, site_url, "SL")
    take_in(second, site_url, first)
    assert second.locator("#cards").get_by_role("alert").count() == 0
    onwards = saved(second, site_url, card, tmp_path / "second.json")
    assert json.loads(onwards.read_text("utf-8"))["elsewhere"] == runs


def test_an_open_card_shows_what_a_file_brought(page, second, site_url, tmp_path):
    card = begun_card(page, site_url, "set-band")
    name_oneself(second, site_url, "SL")
    take_in(second, site_url, saved(page, site_url, card, tmp_path / "one.json"))
    go_to(second, site_url, card, 1)
    tick_off(second)
    back = saved(second, site_url, card, tmp_path / "two.json")
    go_to(page, site_url, card, 1)
    other = page.context.new_page()
    take_in(other, site_url, back, "Add it to the card")
    expect(tick(page)).to_have_attribute("data-state", "stored")
    expect(page.locator(".uh-card__said").first).to_contain_text("Done by SL")


def test_axe_finds_nothing_on_the_screens_of_the_exchange(page, new_page, site_url, tmp_path):
    second = new_page
    second.set_viewport_size({"width": 360, "height": 640})
    card = begun_card(page, site_url, "set-band")
    path = saved(page, site_url, card, tmp_path / "card.json")
    choose(second, site_url, path)
    second.get_by_role("button", name="Take it in").wait_for()
    assert findings(second) == [], "what is in the file"
    assert second.evaluate("document.documentElement.scrollWidth") <= 360
    second.get_by_role("button", name="Take it in").click()
    second.get_by_role("link", name="Open the card").wait_for()
    assert findings(second) == [], "taken in"
    (tmp_path / "bad.json").write_text("{}", "utf-8")
    choose(second, site_url, tmp_path / "bad.json")
    second.locator("#cards").get_by_role("alert").wait_for()
    assert findings(second) == [], "refused"
    second.add_init_script("Object.defineProperty(navigator, 'standalone', {value: false})")
    open_cards(second, site_url)
    second.reload()
    second.get_by_role("region", name="Put the manual on the home screen first").wait_for()
    assert findings(second) == [], "install first"
