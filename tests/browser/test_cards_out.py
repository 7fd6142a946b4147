"""What comes out of a card: closing with a last look, the sheets for paper, the readings as CSV."""

from __future__ import annotations

import re

import pytest
from card_filled import FINDINGS, filled_card, show
from card_hands import stored_events
from playwright.sync_api import expect

pytestmark = pytest.mark.browser


@pytest.fixture
def whole(page, site_url):
    """A card with something of everything on it."""
    return filled_card(
        page, site_url, off=["pan"], skip=["drop-pan 3"], findings=FINDINGS, photos=[True, False]
    )


def press(page, name):
    page.get_by_role("button", name=name, exact=True).click()


def pages_of(pdf: bytes) -> int:
    return len(re.findall(rb"/Type\s*/Page\b", pdf))


PRINTED_AT_ONCE = """() => {
    dispatchEvent(new Event("beforeprint"));
    const pictures = [...document.querySelectorAll(".uh-card--paper img")];
    const isWhole = pictures.every(({ complete, naturalWidth }) => complete && naturalWidth > 0);
    dispatchEvent(new Event("afterprint"));
    return pictures.length > 0 && isWhole;
}"""
"""A browser prints when this event is over: what is loaded by then is on the paper."""


def test_a_card_that_is_printed_from_its_step_has_its_photos(page, site_url, whole):
    show(page, site_url, whole, "1")
    page.wait_for_function(PRINTED_AT_ONCE)
    expect(page.locator(".uh-card--paper")).to_have_count(0)


def test_the_last_look_tells_everything_with_the_way_to_it(page, site_url, whole):
    show(page, site_url, whole, "close")
    expect(page.locator("#cards h3")).to_have_text(
        [
            "Still off",
            "Readings outside their limits, or not readable",
            "Steps left out",
            "Look-alike parts not identified",
            "Findings without a decision",
            "Fluid",
            "Photos",
        ]
    )
    words = page.locator(".uh-look p")
    expect(words).to_contain_text(
        [
            "Pan.",
            "Turns until the adjuster seats, as found: 3 turns. Outside 1 1/4 to 2 turns.",
            "Not needed, by RB: Not on this vehicle",
            "Not needed, by RB: Not on this vehicle",
            "Filter",
            "The pan has an old dent",
            "4 litres came out, 4.6 litres put in.",
            "0.6 litres more was put in than came out.",
            "That is more than lies between the dipstick’s marks, 0.5 litres.",
            "The picture of 1 photo is not on this phone. It is on the one that took it.",
        ]
    )
    page.get_by_role("link", name="To put it back on: Fit the pan").click()
    expect(page.locator(".uh-card__title")).to_have_text(re.compile("^Step "))


def test_closing_with_something_off_wants_a_reason_and_keeps_it(page, site_url, whole):
    show(page, site_url, whole, "close")
    press(page, "Close the card")
    label = "Still off: pan. Why is the card closed all the same?"
    expect(page.get_by_label(label)).to_be_focused()
    press(page, "Close the card with this reason")
    expect(page.locator(".uh-field__error")).to_have_text("Nothing is entered.")
    page.get_by_label(label).fill("The vehicle leaves on a trailer, without its pan")
    press(page, "Close the card with this reason")
    closed = re.compile(
        r"^Closed by RB, .*Reason: The vehicle leaves on a trailer, without its pan$"
    )
    expect(page.get_by_text(closed)).to_be_visible()
    last = stored_events(page, site_url)[-1]
    reason = "The vehicle leaves on a trailer, without its pan"
    assert (last["kind"], last["value"]) == ("close", {"reason": reason, "off": ["pan"]})
    press(page, "Open it again")
    expect(page.get_by_role("button", name="Close the card", exact=True)).to_be_visible()


def test_a_card_in_order_closes_with_one_press(page, site_url):
    card = filled_card(page, site_url, ["extract-fluid"])
    show(page, site_url, card, "close")
    expect(page.locator("#cards h3")).to_have_text(["Fluid"])
    press(page, "Close the card")
    expect(page.get_by_text(re.compile("^Closed by RB, "))).to_be_visible()
    assert stored_events(page, site_url)[-1]["value"] == {}


def test_an_open_second_check_keeps_the_card_open_and_says_which(page, site_url):
    card = filled_card(page, site_url, ["set-band"], unchecked=True)
    show(page, site_url, card, "close")
    expect(page.locator(".uh-card__open p")).to_have_text(
        ["Wants a second check by other initials."] * 3
    )
    assert page.get_by_role("button", name="Close the card").count() == 0
    page.get_by_role("link", name="Step 7: Seat the screw").click()
    expect(page.locator(".uh-card__title")).to_have_text("Step 7 of 12")


def test_the_owner_reads_one_page_in_plain_words(page, site_url, whole):
    show(page, site_url, whole, "owner")
    sheet = page.locator(".uh-owner")
    expect(sheet.locator(".uh-owner__stop")).to_contain_text(
        "Do not drive it before this is put right"
    )
    expect(sheet.locator("blockquote")).to_have_text("It hangs on in first and leaves a puddle")
    expect(sheet.locator(".uh-sheet__finding > div:first-child")).to_have_text(
        [
            "The hose from the manifold was crackedPut right on this visit.",
            "The rear joint has playBefore it is driven. "
            "We advise you to have it done. It is not done yet.",
            "Fine metal on the magnetAt the next service. You decided against it for now.",
            "The pan has an old dentOnly to know.",
        ]
    )
    expect(sheet).not_to_contain_text("He sells it soon")  # the shop's own note
    expect(sheet.locator("img")).to_have_count(4)
    expect(sheet.get_by_text("4 litres came out, 4.6 litres put in.")).to_be_visible()
    expect(page).to_have_title(re.compile("^Owner’s sheet, Marlow Drover, green - "))
    assert pages_of(page.pdf(prefer_css_page_size=True)) == 1


def test_what_was_measured_is_on_the_owners_sheet_where_the_shop_wants_it(page, site_url):
    card = filled_card(page, site_url, ["flatten-flange"])
    show(page, site_url, card, "owner")
    measured = page.locator(".uh-owner__measured")
    expect(measured).to_be_hidden()
    page.get_by_label("Show what was measured before and after").check()
    expect(measured.locator("li")).to_have_text(
        "Greatest gap below the straight-edge: 0 millimetres before, 0 millimetres after"
    )
    expect(page.get_by_text("We found nothing that you need to know of.")).to_be_visible()


def test_the_parts_list_is_ticked_on_the_card(page, site_url, whole):
    show(page, site_url, whole, "parts")
    filter_ = page.get_by_role("checkbox", name="Filter Not identified: it has look-alikes.")
    expect(filter_).not_to_be_checked()
    filter_.check()
    mine = page.get_by_role("checkbox", name="RB has it.")
    expect(mine).to_be_checked()
    expect(mine).to_be_focused()
    last = stored_events(page, site_url)[-1]
    assert (last["kind"], last["value"]) == ("fetch", {"thing": "part|kestrel-3/filter"})
    expect(page.locator(".uh-parts").get_by_text("Dunmere D2")).to_contain_text("4.6 litres put in")
    expect(page.locator(".uh-parts").last).to_contain_text("The rear joint has play")
    mine.click()  # its name goes with its tick
    expect(page.get_by_text("RB has it.")).to_have_count(0)
    assert stored_events(page, site_url)[-1]["kind"] == "undo"


def test_the_job_sheet_on_paper(page, site_url, whole):
    show(page, site_url, whole, "sheet")
    page.emulate_media(media="print")
    sheet = page.locator(".uh-card__sheet")
    table = sheet.locator(".uh-readings")
    expect(table.locator("thead th")).to_have_text(["Reading", "As found", "As left", "Good", "By"])
    row = table.locator("tr", has_text="Turns until the adjuster seats")
    expect(row.locator("td")).to_have_text(
        ["3 turns (outside)", "not asked", "1 1/4 to 2 turns", "RB"]
    )
    expect(sheet.get_by_text("Pan, taken off by “Take off the pan")).to_be_visible()
    expect(sheet.get_by_text(re.compile(r"^Second check by SL, ")).first).to_be_visible()
    expect(sheet.get_by_text(re.compile(r"^Revision [0-9a-f]{10}")).first).to_be_visible()
    expect(page.locator(".uh-papers")).to_be_hidden()
    inside = "all => all.every(line => getComputedStyle(line).breakInside === 'avoid')"
    assert sheet.locator(".uh-card__line").evaluate_all(inside)


def test_an_empty_sheet_has_room_to_write(page, site_url):
    card = filled_card(page, site_url, ["set-band"], skip=[])
    page.evaluate(
        """async ([root, card]) => {
            const { eventsOf, append } = await import(root + "assets/cards/record/store.js");
            const { draft } = await import(root + "assets/cards/record/events.js");
            const made = (await eventsOf(card)).filter(({ kind }) => !/start|add/.test(kind));
            for (const { id } of made) {
                await append(draft({ card, who: "RB", kind: "undo", value: { of: id } }), 1e6);
            }
        }""",
        [site_url, card],
    )
    show(page, site_url, card, "sheet")
    expect(page.locator(".uh-card__line .uh-card__space")).to_have_count(2 + 3)
    expect(page.locator(".uh-readings")).to_have_count(0)
    expect(page.get_by_text("No readings yet to save as CSV.")).to_be_visible()
