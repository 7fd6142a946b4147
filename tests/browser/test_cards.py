"""A job card on a phone: started, worked, checked, closed; reloaded, offline, in two windows."""

from __future__ import annotations

import re

import pytest
from card_hands import (
    begun_card,
    chain_is_whole,
    go_to,
    open_cards,
    sign_check,
    start_card,
    stored_events,
    take_time,
    tick,
    tick_and_sign,
    tick_off,
    turn_to,
)
from playwright.sync_api import expect

pytestmark = pytest.mark.browser


SET_BAND = {"steps": 12, "reading": 4, "seat": 7, "second reading": 9, "lock": 11}
"""Positions in the demo's procedure, checked by the first test."""


def kinds(page, site_url):
    return [event["kind"] for event in stored_events(page, site_url)]


def left(page):
    return page.locator(".uh-card__left")


def take_reading(page, written):
    page.locator(".uh-card__reading input").fill(written)
    page.get_by_role("button", name="Record", exact=True).click()


def take_good_reading(page, written):
    take_reading(page, written)
    expect(page.locator(".uh-card__work > [aria-live]")).to_contain_text("Recorded")


def test_a_whole_card_from_start_to_close(page, site_url):
    card = start_card(page, site_url, "set-band")
    expect(left(page)).to_have_text(f"Left: {SET_BAND['steps']} of {SET_BAND['steps']} steps.")
    for position in range(1, SET_BAND["steps"] + 1):
        if position == SET_BAND["reading"]:
            take_good_reading(page, "1 3/4")
        if position == SET_BAND["second reading"]:
            take_good_reading(page, "1 1/2")
        tick_and_sign(page, position, SET_BAND["steps"])
    expect(left(page)).to_have_text("Nothing is left. Close the card.")
    page.get_by_role("link", name="Close the card").click()
    page.get_by_role("button", name="Close the card").click()
    expect(page.get_by_text(re.compile(r"^Closed by RB, "))).to_be_visible()
    found = kinds(page, site_url)
    assert (found[:2], found[-1]) == (["start", "add"], "close")
    assert found.count("tick") == SET_BAND["steps"]
    assert found.count("reading") == 2
    assert found.count("check") == 3
    assert chain_is_whole(page, site_url)
    page.get_by_role("link", name="The sheet to print").click()
    expect(page.locator(".uh-card__line")).to_have_count(SET_BAND["steps"])
    expect(page.locator(".uh-card__value", has_text="1 3/4 turns")).to_be_visible()
    open_cards(page, site_url, "#")
    expect(page.get_by_role("heading", name="Closed")).to_be_visible()
    assert page.locator(f'a[href="#card/{card}"]').count() == 1


def test_a_card_survives_a_reload(page, site_url):
    begun_card(page, site_url, "set-band")
    tick_off(page)
    tick_off(page)
    page.reload()
    expect(page.locator(".uh-card__title")).to_have_text("Step 3 of 12")
    expect(left(page)).to_have_text("Left: 10 of 12 steps.")
    before = page.locator('[data-place="before"]')
    expect(before).to_have_attribute("data-state", "stored")
    page.get_by_role("button", name="Your initials: RB. Change them").wait_for()


def test_closing_is_refused_and_says_which_steps_are_open(page, site_url):
    card = begun_card(page, site_url, "set-band")
    tick_off(page)
    go_to(page, site_url, card, SET_BAND["seat"])
    tick_off(page)
    page.get_by_role("button", name="Later").click()
    go_to(page, site_url, card, 3)
    page.get_by_role("button", name="Hand back").click()
    page.get_by_label("What do you want to ask?").fill("Which mark counts?")
    page.locator(".uh-card__ask").get_by_role("button", name="Hand back").click()
    expect(left(page)).to_have_text("Left: 9 of 12 steps, 1 second check, 1 question.")
    page.get_by_role("link", name="Close the card").click()
    expect(page.locator(".uh-card__open a")).to_have_text(
        [
            "Steps 2, 4 to 6 and 8 to 12: not done, and no reason given.",
            re.compile("^Step 3: Loosen the locknut"),
            re.compile("^Step 7: Seat the screw"),
        ]
    )
    expect(page.locator(".uh-card__open p")).to_have_text(
        ["Handed back: Which mark counts?", "Wants a second check by other initials."]
    )
    assert page.get_by_role("button", name="Close the card").count() == 0
    page.get_by_role("link", name="Step 7: Seat the screw").click()
    expect(page.locator(".uh-card__title")).to_have_text("Step 7 of 12")


def test_undo_is_an_event_and_takes_nothing_away(page, site_url):
    card = begun_card(page, site_url, "set-band")
    tick_off(page)
    go_to(page, site_url, card, 1)
    expect(tick(page)).to_have_attribute("data-state", "stored")
    page.get_by_role("button", name="Undo the tick by RB").click()
    expect(tick(page)).to_have_attribute("data-state", "todo")
    assert kinds(page, site_url) == ["start", "add", "tick", "undo"]


def test_the_second_check_wants_other_initials(page, site_url):
    card = begun_card(page, site_url, "set-band")
    go_to(page, site_url, card, SET_BAND["seat"])
    tick_off(page)
    sign_check(page, "r.b")
    error = page.locator(".uh-card__ask .uh-field__error")
    expect(error).to_have_text(
        "RB ticked this step. The second check wants somebody else's initials."
    )
    sign_check(page, "S7")
    expect(error).to_have_text("“S7” does not look like initials. Write letters only, such as RB.")
    sign_check(page, "sl")
    expect(page.locator(".uh-card__title")).to_have_text("Step 8 of 12")
    go_to(page, site_url, card, SET_BAND["seat"])
    expect(tick(page)).to_have_attribute("data-state", "checked")
    assert [e["who"] for e in stored_events(page, site_url) if e["kind"] == "check"] == ["SL"]


def test_a_reading_outside_its_limits_wants_a_reason(page, site_url):
    card = begun_card(page, site_url, "set-band")
    go_to(page, site_url, card, SET_BAND["reading"])
    tick(page).click()
    expect(page.get_by_role("alert").filter(has_text="Take the reading first")).to_be_visible()
    error = page.locator(".uh-card__reading .uh-field__error")
    take_reading(page, "1,5")
    expect(error).to_have_text("“1,5” has a comma. Write 1.5.")
    take_reading(page, "2 1/2")
    expect(error).to_have_text("2 1/2 is outside 1 1/4 to 2 turns. Say why, or what you found.")
    assert page.locator(".uh-card__reading input").input_value() == "2 1/2"
    page.get_by_label("Reason or finding").fill("Lining worn thin")
    page.get_by_role("button", name="Record", exact=True).click()
    expect(page.locator(".uh-card__said").first).to_contain_text(
        "Outside 1 1/4 to 2 turns. Reason: Lining worn thin"
    )
    tick_off(page)
    assert kinds(page, site_url) == ["start", "add", "reading", "tick"]


def test_fractions_of_a_turn_are_one_tap(page, site_url):
    card = begun_card(page, site_url, "set-band")
    go_to(page, site_url, card, SET_BAND["reading"])
    page.locator(".uh-card__reading input").fill("1")
    page.get_by_role("button", name="and 3/4 turn").click()
    page.get_by_role("button", name="Record", exact=True).click()
    expect(page.locator(".uh-card__value")).to_have_text("1 3/4 turns")


def test_a_reading_that_cannot_be_taken_says_why(page, site_url):
    card = begun_card(page, site_url, "set-band")
    go_to(page, site_url, card, SET_BAND["reading"])
    page.get_by_role("button", name="Not readable").click()
    page.get_by_label("Reason or finding").fill("The screw turned with the nut")
    page.get_by_role("button", name="Not readable").click()
    expect(page.locator(".uh-card__value")).to_have_text("not readable")


def test_not_needed_wants_a_reason(page, site_url):
    begun_card(page, site_url, "set-band")
    page.get_by_role("button", name="Not needed").click()
    page.get_by_role("button", name="Mark as not needed").click()
    expect(page.locator(".uh-card__ask .uh-field__error")).to_have_text("Nothing is entered.")
    page.get_by_label("Why is this step not needed?").fill("Done yesterday")
    page.get_by_role("button", name="Mark as not needed").click()
    expect(page.locator('[data-place="before"]')).to_have_attribute("data-state", "not-needed")


def test_a_new_card_says_beside_each_field_what_is_missing(page, site_url):
    open_cards(page, site_url, "#new")
    page.get_by_label("Your initials").fill("RB")
    page.get_by_role("button", name="Keep").click()
    page.get_by_label("Odometer").fill("84210")
    page.get_by_role("button", name="Start the card").click()
    expect(page.locator("#uh-odometer-error")).to_have_text(
        "“84210” has no unit. Write 84210 km or 84210 miles."
    )
    expect(page.locator("#uh-identification-error")).to_have_text(
        "Nothing is entered. This is needed to start."
    )
    assert page.get_by_label("Odometer").input_value() == "84210"
    assert stored_events(page, site_url) == []


def test_a_complaint_leads_to_the_next_check_and_leaves_the_choice(page, site_url):
    open_cards(page, site_url, "#new")
    page.get_by_label("Your initials").fill("RB")
    page.get_by_role("button", name="Keep").click()
    page.get_by_label("Unit family").select_option("kestrel-3")
    page.get_by_label("Identification").fill("Tern Carrier")
    page.get_by_label("Odometer").fill("1 km")
    page.get_by_label("In the owner’s words").fill("Late")
    page.locator("#uh-faults input").first.check()
    page.get_by_role("button", name="Start the card").click()
    expect(page.get_by_role("heading", name="Fault finding")).to_be_visible()
    page.get_by_role("link", name="Add procedures").click()
    expect(page.get_by_role("heading", name="Its checks, as the page writes them")).to_be_visible()
    assert page.locator("input[name=procedure]").count() >= 2
    assert page.locator("input[name=procedure]:checked").count() == 0


def test_two_windows_tick_at_once(page, site_url):
    card = begun_card(page, site_url, "set-band")
    other = page.context.new_page()
    open_cards(other, site_url, f"#card/{card}/2")
    for window, position in [(page, 1), (other, 2)]:
        go_to(window, site_url, card, position)
        take_time(window)
    for window in (page, other):
        window.evaluate("setTimeout(() => document.querySelector('button.uh-tick').click(), 100)")
    for window in (page, other):
        expect(left(window)).to_have_text("Left: 10 of 12 steps.")
    events = stored_events(page, site_url)
    assert sorted(event["sequence"] for event in events) == [1, 2, 3, 4]
    assert chain_is_whole(page, site_url)


def test_two_windows_storing_fast_keep_one_chain(page, site_url):
    begun_card(page, site_url, "set-band")
    other = page.context.new_page()
    open_cards(other, site_url)
    burst = """async ({ root, who }) => {
        const { append } = await import(root + "assets/cards/record/store.js");
        const { draft } = await import(root + "assets/cards/record/events.js");
        const one = () => append(draft({ card: "c", who, kind: "close", value: {} }));
        window.stored = Promise.all(Array.from({ length: 40 }, one)).then((all) => all.length);
    }"""
    for window, who in [(page, "RB"), (other, "SL")]:
        window.evaluate(burst, {"root": site_url, "who": who})
    assert [window.evaluate("window.stored") for window in (page, other)] == [40, 40]
    events = [event for event in stored_events(page, site_url) if event["card"] == "c"]
    assert len(events) == 80
    assert chain_is_whole(page, site_url)


def test_markup_in_a_stored_card_is_not_run(page, site_url):
    begun_card(page, site_url, "set-band")
    card = page.evaluate(
        """async (root) => {
            const { append } = await import(root + "assets/cards/record/store.js");
            const { draft } = await import(root + "assets/cards/record/events.js");
            const card = crypto.randomUUID();
            const html = `<p class="uh-step__do other" style="position:fixed" onclick="x=1">
                Safe <img src="x" onerror="window.ran = 1"><script>window.ran = 2</script>
                <svg onload="window.ran = 3"><path d="M0 0"/></svg><iframe src="/"></iframe>
                <a href="javascript:window.ran=4">one</a> <a href="https://elsewhere.example/">two</a>
                <form action="/x"><input name="q"></form></p>`;
            const step = { number: 1, html, text: "<b>Safe</b>", torques: [], cautions: [],
                readings: [], wants_second_check: false };
            const procedure = { id: "x", title: "<i>T</i>", revision: "r", minutes: 1, tools: [],
                parts: [], consumables: [], fluids: [], cautions: [], before: [], steps: [step] };
            const vehicle = { identification: "<u>V</u>", family_title: "K", odometer: "1 km" };
            const does = (kind, value) => append(draft({ card, who: "RB", kind, value }));
            await does("start", { vehicle, complaint: "<s>C</s>", fault: "" });
            await does("add", { procedure });
            return card;
        }""",
        site_url,
    )
    open_cards(page, site_url, f"#card/{card}")
    words = page.locator(".uh-card__do")
    expect(words).to_contain_text("Safe")
    words.get_by_text("one").click()
    assert page.evaluate("window.ran") is None
    inner = words.inner_html()
    for part in ("script", "iframe", "form", "input", "on", "javascript", "elsewhere", "style"):
        assert not re.search(rf"<{part}\b|\b{part}\w*=|href=\"{part}", inner), (part, inner)
    assert page.locator(".uh-card u, .uh-card b, .uh-card i, .uh-card s").count() == 0


def test_the_tick_is_64_pixels_and_nothing_scrolls_sideways(page, site_url):
    card = begun_card(page, site_url, "set-band")
    for width, height in [(360, 640), (390, 844), (320, 568)]:
        page.set_viewport_size({"width": width, "height": height})
        for part in ("", "/4", "/7", "/sheet", "/fetch", "/add", "/close"):
            turn_to(page, f"#card/{card}{part}")
            assert page.evaluate("document.documentElement.scrollWidth") <= width, (part, width)
        turn_to(page, f"#card/{card}")
        box = tick(page).bounding_box()
        assert (box["width"], box["height"]) == (64, 64)
        assert box["y"] + box["height"] <= height, "the tick is on the screen"


def test_a_card_is_worked_with_the_keyboard_alone(page, site_url):
    begun_card(page, site_url, "set-band")
    tick(page).focus()
    take_time(page)
    page.keyboard.press("Space")
    expect(page.locator(".uh-card__title")).to_have_text("Step 2 of 12")
    expect(tick(page)).to_be_focused()
    expect(tick(page)).to_have_attribute("aria-pressed", "false")
    page.keyboard.press("Shift+Tab")
    expect(page.get_by_role("button", name="Hand back")).to_be_focused()
    page.keyboard.press("Enter")
    expect(page.get_by_label("What do you want to ask?")).to_be_focused()
    page.keyboard.type("Which one?")
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    expect(left(page)).to_have_text("Left: 10 of 12 steps, 1 question.")


def test_a_second_tap_too_soon_is_not_a_second_tick(page, site_url):
    begun_card(page, site_url, "set-band")
    page.evaluate("() => { const at = performance.now(); performance.now = () => at; }")
    tick(page).dblclick()
    expect(page.locator(".uh-card__title")).to_have_text("Step 2 of 12")
    tick(page).click()
    page.wait_for_function("() => !('cardUnstored' in document.documentElement.dataset)")
    assert kinds(page, site_url) == ["start", "add", "tick"]


def test_on_paper_the_card_is_its_sheet(page, site_url):
    begun_card(page, site_url, "set-band")
    page.evaluate("window.dispatchEvent(new Event('beforeprint'))")
    page.emulate_media(media="print")
    expect(page.locator(".uh-card__sheet")).to_be_visible()
    expect(page.locator(".uh-card__screen")).to_be_hidden()
    expect(page.locator(".uh-card__foot")).to_contain_text("Set the front band")
    expect(page.locator(".uh-safety")).to_contain_text("manual and local law")
    expect(page.get_by_role("heading", name="Job cards")).to_be_hidden()
    expect(page.locator(".uh-card__value", has_text="120 pound-force inches")).to_be_visible()
    page.emulate_media(media="screen")
    page.evaluate("window.dispatchEvent(new Event('afterprint'))")
    assert page.locator(".uh-card__sheet").count() == 0


def test_a_card_keeps_the_text_it_began_with(page, site_url):
    card = start_card(page, site_url, "set-band")
    page.route("**/cards/data/*.json", lambda route: route.abort())
    page.reload()
    expect(page.locator(".uh-card__from")).to_have_text("Set the front band")
    added = next(e for e in stored_events(page, site_url) if e["kind"] == "add")
    assert added["revision"] == added["value"]["procedure"]["revision"] != ""
    open_cards(page, site_url, f"#card/{card}/add")
    expect(page.locator("#cards").get_by_role("alert")).to_have_text(
        "The list of procedures is not on this phone yet. Go where there is a signal and open "
        "the manual once."
    )
