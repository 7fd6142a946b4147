"""The working view of a job card: one thumb, a small phone, nothing lost or confirmed too early."""

from __future__ import annotations

import re

import pytest
from card_hands import begun_card, go_to, open_cards, stored_events, tick, tick_off
from playwright.sync_api import expect

pytestmark = pytest.mark.browser


SEATS, TIGHTENS = 4, 7
"""Positions in the demo's procedure for the band: a reading of turns, a second check."""
FOUND, LEFT = 2, 7
"""Positions in the demo's procedure for a flange where one gap is read as found and as left."""
LONG = "The rear universal joint has play in both caps and the grease is dry. " * 5


def entry(page):
    return page.locator(".uh-card__reading input[type=text]")


def press(page, *keys):
    for key in keys:
        page.locator(".uh-pad").get_by_role("button", name=key, exact=True).tap()


def record(page):
    page.get_by_role("button", name="Record", exact=True).click()


def happened(page, kind):
    return [event["value"] for event in stored_events(page, None) if event["kind"] == kind]


def put(page, site_url, card, kind, value):
    """Store an event as the page would, and show it."""
    page.evaluate(
        """async ([root, card, who, kind, value]) => {
            const { append } = await import(root + "assets/cards/record/store.js");
            const { draft } = await import(root + "assets/cards/record/events.js");
            await append(draft({ card, who, kind, value }), 1000);
        }""",
        [site_url, card, "RB", kind, value],
    )
    page.reload()
    page.wait_for_selector("#cards[data-ready]")


def job_of(page):
    return next(e["id"] for e in stored_events(page, None) if e["kind"] == "add")


def test_a_pad_for_one_thumb_takes_a_reading(small_phone, site_url):
    page = small_phone
    card = begun_card(page, site_url, "set-band")
    go_to(page, site_url, card, SEATS)
    assert entry(page).get_attribute("inputmode") == "none"
    expect(page.locator(".uh-pad")).to_be_hidden()
    entry(page).tap()
    expect(page.locator(".uh-pad")).to_be_visible()
    bar = page.locator(".uh-card__acts").bounding_box()["y"]
    for key in page.locator(".uh-pad__key:visible").all():
        box = key.bounding_box()
        assert min(box["width"], box["height"]) >= 56, key.get_attribute("aria-label")
        assert box["y"] + box["height"] <= bar, "no key lies behind the row at the edge"
    done = page.get_by_role("button", name="Record", exact=True).bounding_box()
    assert done["y"] + done["height"] <= bar + 1
    press(page, "2", "1", "and 1/2 turn")
    page.get_by_role("button", name="Delete", exact=True).tap()
    page.get_by_role("button", name="Delete", exact=True).tap()
    expect(entry(page)).to_have_value("2")
    page.get_by_role("button", name="Delete", exact=True).tap()
    press(page, "1", "and 3/4 turn")
    record(page)
    expect(page.locator(".uh-card__value")).to_have_text("1 3/4 turns")
    assert happened(page, "reading")[0]["written"] == "1 3/4"


def test_the_ordinary_keyboard_stays_possible(page, site_url):
    card = begun_card(page, site_url, "set-band")
    go_to(page, site_url, card, SEATS)
    entry(page).focus()
    page.keyboard.type("1 1/2")
    page.keyboard.press("Tab")
    expect(page.get_by_role("button", name="Record", exact=True)).to_be_focused()
    page.keyboard.press("Shift+Tab")
    page.locator(".uh-pad").get_by_role("button", name="Use the phone’s keyboard").click()
    expect(page.locator(".uh-pad")).to_be_hidden()
    expect(entry(page)).to_be_focused()
    assert entry(page).get_attribute("inputmode") == "text"
    page.keyboard.press("Enter")
    expect(page.locator(".uh-card__value")).to_have_text("1 1/2 turns")


def test_a_pad_without_turns_has_no_fractions_and_no_minus(page, site_url):
    card = begun_card(page, site_url, "flatten-flange")
    go_to(page, site_url, card, FOUND)
    entry(page).click()
    names = page.locator(".uh-pad__key:visible").evaluate_all(
        "keys => keys.map((key) => key.getAttribute('aria-label'))"
    )
    assert names == [
        "Delete", *"123456789", "Use the phone’s keyboard", "0", "Point"
    ]  # fmt: skip


def test_as_found_stands_beside_as_left_with_the_difference(page, site_url):
    card = begun_card(page, site_url, "flatten-flange")
    go_to(page, site_url, card, FOUND)
    expect(page.locator(".uh-card__reading label").first).to_have_text(
        "Greatest gap below the straight-edge, as found"
    )
    entry(page).fill("0.20")
    record(page)
    go_to(page, site_url, card, LEFT)
    pair = page.locator(".uh-pair")
    expect(pair.locator("dd")).to_have_text(["0.20 millimetres", "not taken yet"])
    entry(page).fill("0.05")
    expect(page.get_by_text("As left: 0.15 millimetres less than as found.")).to_be_visible()
    record(page)
    expect(pair.locator("dd")).to_have_text(["0.20 millimetres", "0.05 millimetres"])
    expect(pair.locator("p")).to_have_text("0.15 millimetres less than as found.")
    assert [one["when"] for one in happened(page, "reading")] == ["as found", "as left"]


def test_a_reading_outside_its_limits_becomes_a_finding(page, site_url):
    card = begun_card(page, site_url, "set-band")
    go_to(page, site_url, card, SEATS)
    entry(page).fill("2 1/2")
    record(page)
    page.get_by_label("Reason or finding").fill("Lining worn thin.")
    page.get_by_role("button", name="Make it a finding").click()
    record(page)
    expect(page.get_by_text("Choose how soon it wants seeing to.")).to_be_visible()
    assert happened(page, "reading") == []
    page.get_by_label("At the next service").check()
    record(page)
    line = page.locator(".uh-finding")
    expect(line.locator(".uh-finding__what")).to_have_text(
        "Lining worn thin. Turns until the adjuster seats, as found: 2 1/2 turns; good is 1 1/4 "
        "to 2 turns."
    )
    expect(line).to_contain_text("At the next service. Found by RB, ")
    assert happened(page, "reading")[0]["reason"] == "Lining worn thin."
    (finding,) = happened(page, "finding")
    assert (finding["urgency"], finding["step"]) == ("next service", SEATS)


def test_a_reading_within_its_limits_asks_for_nothing(page, site_url):
    card = begun_card(page, site_url, "set-band")
    go_to(page, site_url, card, SEATS)
    entry(page).fill("2")
    record(page)
    expect(page.locator(".uh-card__value")).to_have_text("2 turns")
    expect(page.get_by_label("Reason or finding")).to_have_count(0)


def test_what_is_half_typed_outlives_what_is_stored_meanwhile(page, site_url):
    card = begun_card(page, site_url, "set-band")
    go_to(page, site_url, card, SEATS)
    entry(page).fill("1 3/")
    page.get_by_role("button", name="Finding", exact=True).click()
    page.get_by_label("What did you find?").fill("Nut rounded")
    page.get_by_label("Only to know").check()
    page.get_by_role("button", name="Write it down").click()
    expect(page.locator(".uh-finding__what")).to_have_text("Nut rounded")
    expect(entry(page)).to_have_value("1 3/")
    page.reload()
    expect(page.locator(".uh-card__title")).to_have_text(f"Step {SEATS} of 12")
    expect(entry(page)).to_have_value("")
    expect(page.locator(".uh-finding__what")).to_have_text("Nut rounded")
    assert happened(page, "reading") == [], "what was not recorded is not shown as if it were"


def test_a_reading_says_which_calculator_it_came_from(page, site_url):
    card = begun_card(page, site_url, "set-band")
    go_to(page, site_url, card, SEATS)
    value = {"job": job_of(page), "step": SEATS, "reading": "set-band/turns-to-seat", "reason": ""}
    taken = {**value, "when": "as found", "unit": "turn", "written": "1 1/2"}
    path = re.sub(r"^https?://[^/]+", "", site_url)
    own = f"{path}calculators/band-set/?pitch=1.27+mm"
    put(page, site_url, card, "reading", {**taken, "from": own})
    said = page.locator(".uh-card__readings .uh-card__said")
    expect(said.get_by_role("link")).to_have_text("Worked out by the calculator.")
    href = said.get_by_role("link").get_attribute("href")
    assert href.endswith(f"{own}#card={card}/{SEATS}"), "with the way back to the step"
    put(page, site_url, card, "reading", {**taken, "from": "https://elsewhere.example/"})
    expect(said).to_contain_text("Worked out by the calculator.")
    expect(said.get_by_role("link")).to_have_count(0)


def test_the_procedures_calculators_stand_small_on_its_steps(page, site_url):
    card = begun_card(page, site_url, "set-band")
    link = page.locator(".uh-card__calculators a")
    expect(link).to_have_text(["Band set"])
    assert re.search(rf"calculators/band-set/\?.*#card={card}/1$", link.get_attribute("href"))


def test_a_done_step_is_handed_back_and_answered_from_the_list_of_questions(page, site_url):
    card = begun_card(page, site_url, "set-band")
    tick_off(page)
    go_to(page, site_url, card, 1)
    page.get_by_role("button", name="Hand back").click()
    page.get_by_label("What do you want to ask?").fill("Is this clean enough?")
    page.locator(".uh-card__ask").get_by_role("button", name="Hand back").click()
    expect(page.locator(".uh-card__left")).to_have_text("Left: 11 of 12 steps, 1 question.")
    page.get_by_role("link", name="Questions for the senior: 1 open").click()
    expect(page.locator(".uh-finding__what")).to_have_text("Is this clean enough?")
    page.get_by_role("button", name="Answer: Is this clean enough?").click()
    page.get_by_label("Your answer").fill("It is")
    page.get_by_role("button", name="Answer", exact=True).click()
    expect(page.get_by_text("Every question is answered.")).to_be_visible()
    expect(page.get_by_text(re.compile("^Answered by RB, .*: It is$"))).to_be_visible()
    go_to(page, site_url, card, 1)
    expect(tick(page)).to_have_attribute("data-state", "stored")


def test_findings_are_decided_and_a_changed_mind_is_a_new_entry(page, site_url):
    card = begun_card(page, site_url, "set-band")
    page.get_by_role("button", name="Finding", exact=True).click()
    page.get_by_role("button", name="Write it down").click()
    expect(page.get_by_text("Nothing is entered. Write what you found.")).to_be_visible()
    page.get_by_label("What did you find?").fill("Hose cracked")
    page.get_by_role("button", name="Write it down").click()
    expect(
        page.get_by_text("Nothing is chosen. Choose how soon it wants seeing to.")
    ).to_be_visible()
    page.get_by_label("On this visit").check()
    page.get_by_role("button", name="Write it down").click()
    expect(page.locator(".uh-finding")).to_contain_text("On this visit. Found by RB")
    page.get_by_role("link", name="Findings: 1").click()
    for choice, note in [("Advised: the owner was told", "Rings back"), ("Done: it was put", "")]:
        page.get_by_role("button", name=re.compile("^Decide.*Hose cracked")).click()
        page.get_by_label(choice).check()
        page.get_by_label("Note").fill(note)
        page.get_by_role("button", name="Record the decision").click()
        said = f"{choice.split(':')[0]}: RB, "
        expect(page.locator(".uh-finding")).to_contain_text(said)
    decided = [(one["decision"], one["note"]) for one in happened(page, "decide")]
    assert decided == [("advised", "Rings back"), ("done", "")]
    page.get_by_role("link", name="Set the front band, step 1").click()
    expect(page.locator(".uh-card__title")).to_have_text("Step 1 of 12")
    assert page.evaluate("location.hash") == f"#card/{card}/1"


def test_at_360_pixels_the_acts_stay_in_one_row(small_phone, site_url):
    page = small_phone
    card = begun_card(page, site_url, "set-band")

    def in_one_row():
        tops = page.locator(".uh-card__others button").evaluate_all(
            "all => all.map((one) => one.getBoundingClientRect().top)"
        )
        assert len(tops) >= 1
        assert len(set(tops)) == 1, tops
        also = page.locator(".uh-card__also .uh-button").evaluate_all(
            "all => all.map((one) => one.getBoundingClientRect().top)"
        )
        assert len(set(also)) == 1, also

    in_one_row()
    go_to(page, site_url, card, TIGHTENS)
    tick_off(page)
    page.get_by_role("button", name="Later").click()
    go_to(page, site_url, card, TIGHTENS)
    in_one_row()
    page.get_by_role("button", name="Undo the tick by RB").click()
    expect(tick(page)).to_have_attribute("data-state", "todo")
    in_one_row()


def test_the_vehicle_is_put_right_later_and_its_family_stays(page, site_url):
    card = begun_card(page, site_url, "set-band")
    page.get_by_role("link", name="Vehicle", exact=True).click()
    expect(page.get_by_label("Unit family")).to_be_disabled()
    expect(page.locator("#uh-family-help")).to_have_text(
        "It stays: the procedures on this card are for the Kestrel 3. For another unit start "
        "another card."
    )
    page.get_by_label("Identification").fill("")
    page.get_by_role("button", name="Store the vehicle").click()
    expect(page.locator("#uh-identification-error")).to_have_text(
        "Nothing is entered. This is needed for the card and for the owner’s sheet."
    )
    page.get_by_label("Identification").fill("Tern Carrier, white")
    page.get_by_label("Axle ratio").fill("3.70")
    page.get_by_role("button", name="Store the vehicle").click()
    expect(page.get_by_text("Stored: Tern Carrier, white · Kestrel 3.")).to_be_visible()
    open_cards(page, site_url, f"#card/{card}")
    expect(page.locator(".uh-card__name")).to_have_text("Tern Carrier, white · Kestrel 3")
    (changed,) = [one["vehicle"] for one in happened(page, "vehicle")]
    assert (changed["family"], changed["axle"]) == ("kestrel-3", "3.70")
    assert changed["odometer"] == "84210 km"


def test_a_line_says_what_is_off_while_something_is(page, site_url):
    card = begun_card(page, site_url, "set-band")
    off = page.locator(".uh-card__off")
    expect(off).to_be_hidden()
    made = page.evaluate(
        "async (root) => (await fetch(root + 'cards/data/set-band.json')).json()", site_url
    )
    for step, off_it, on_it in [(0, ["pan", "propshaft"], []), (1, [], ["Pan"])]:
        made["steps"][step] |= {"takes_off": off_it, "puts_back": on_it}
    put(page, site_url, card, "add", {"procedure": made})
    job = [e["id"] for e in stored_events(page, None) if e["kind"] == "add"][-1]
    put(page, site_url, card, "tick", {"job": job, "step": 1})
    expect(off).to_have_text("Off: pan, propshaft.")
    put(page, site_url, card, "tick", {"job": job, "step": 2})
    expect(off).to_have_text("Off: propshaft.")


def test_what_is_left_is_told_by_procedure(page, site_url):
    card = begun_card(page, site_url, "set-band", "flatten-flange")
    tick_off(page)
    page.locator(".uh-card__from a").click()
    expect(page.get_by_role("heading", name="What is left, by procedure")).to_be_focused()
    lines = page.locator(".uh-card__jobs .uh-card__open li")
    expect(lines).to_have_count(2)
    expect(lines.filter(has_text=re.compile("Left: \\d+ of"))).to_have_count(2)
    lines.last.get_by_role("link").click()
    expect(page.locator(".uh-card__title")).to_have_text(re.compile("^Step 1 of"))
    before = page.locator('[data-place="before"] button')
    expect(before).to_have_text(re.compile(r"(Set the front band|Flatten the flange of a pan): \d"))
    assert page.evaluate("location.hash").startswith(f"#card/{card}/")


def test_the_screen_stays_awake_while_a_card_is_open(new_page, site_url):
    page = new_page
    page.add_init_script(
        """window.locks = [];
        Object.defineProperty(Navigator.prototype, "wakeLock", { value: { request: async (kind) => {
            const lock = { kind, released: false, release: async () => { lock.released = true; } };
            window.locks.push(lock);
            return lock;
        } } });"""
    )
    card = begun_card(page, site_url, "set-band")
    held = "window.locks.filter((lock) => !lock.released).length"
    assert page.evaluate(held) == 1
    for part in ("findings", "questions", "jobs", "vehicle"):
        page.evaluate("hash => { location.hash = hash; }", f"#card/{card}/{part}")
        expect(page.locator("#cards h2")).to_be_focused()
        assert page.evaluate(held) == 1, part
    page.evaluate("location.hash = '#'")
    expect(page.get_by_role("link", name="Start a card")).to_be_visible()
    assert page.evaluate(held) == 0


def test_a_finding_is_written_with_the_keyboard_alone(page, site_url):
    begun_card(page, site_url, "set-band")
    page.get_by_role("button", name="Finding", exact=True).focus()
    page.keyboard.press("Enter")
    expect(page.get_by_label("What did you find?")).to_be_focused()
    page.keyboard.type("Pan dented")
    page.keyboard.press("Tab")
    page.keyboard.press("Space")
    page.keyboard.press("ArrowDown")
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    expect(page.locator(".uh-finding__what")).to_have_text("Pan dented")
    assert happened(page, "finding")[0]["urgency"] == "this visit"
    expect(tick(page)).to_be_focused()


def test_long_words_stay_on_the_screen(small_phone, site_url):
    page = small_phone
    card = begun_card(page, site_url, "set-band")
    finding = {"job": job_of(page), "step": SEATS, "what": LONG, "urgency": "before driving"}
    put(page, site_url, card, "finding", finding)
    asked = {"job": job_of(page), "step": SEATS, "question": "W" * 90}
    put(page, site_url, card, "hand-back", asked)

    def stays_on_the_screen(where):
        assert page.evaluate("document.documentElement.scrollWidth") <= 360, where

    go_to(page, site_url, card, SEATS)
    entry(page).click()
    stays_on_the_screen("the pad")
    entry(page).fill("9")
    record(page)
    page.get_by_role("button", name="Make it a finding").click()
    stays_on_the_screen("outside the limits")
    page.get_by_role("button", name="Finding", exact=True).click()
    stays_on_the_screen("a finding asked for")
    for part, open_ in [
        ("findings", "Decide"),
        ("questions", "Answer"),
        ("jobs", ""),
        ("vehicle", ""),
    ]:
        page.evaluate("hash => { location.hash = hash; }", f"#card/{card}/{part}")
        expect(page.locator("#cards h2")).to_be_focused()
        if open_:
            page.get_by_role("button", name=re.compile(f"^{open_}")).first.click()
        stays_on_the_screen(part)
