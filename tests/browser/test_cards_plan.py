"""Making a card: what comes along, in which order, what to fetch; calculators and the way back."""

from __future__ import annotations

import re

import pytest
from card_hands import fresh_card, go_to, open_cards, stored_events
from playwright.sync_api import expect

pytestmark = pytest.mark.browser


def choices(page, *ids):
    """Open every list of procedures and tick these."""
    for summary in page.locator(".uh-card__form summary").all():
        summary.click()
    for id_ in ids:
        page.locator(f"input[value={id_}]").check()


def order(page):
    return page.locator(".uh-card__order > li").all_inner_texts()


@pytest.fixture
def choosing(page, site_url):
    """A page on which a card was begun and its procedures are to be chosen."""
    open_cards(page, site_url, "#new")
    page.get_by_label("Your initials").fill("RB")
    page.get_by_role("button", name="Keep").click()
    page.get_by_label("Unit family").select_option("kestrel-3")
    page.get_by_label("Identification").fill("Marlow Drover, green")
    page.get_by_label("Tyre").fill("205/75 R 15")
    page.get_by_label("Axle ratio").fill("3.70")
    page.get_by_label("Odometer").fill("84210 km")
    page.get_by_label("In the owner’s words").fill("It hangs on in first")
    page.get_by_role("button", name="Start the card").click()
    expect(page.get_by_role("heading", name="Add procedures")).to_be_visible()
    return page


def test_what_a_job_needs_comes_along_once_and_in_order(choosing):
    page = choosing
    choices(page, "set-band", "selector-shaft-seal")
    titles = [line.splitlines()[0] for line in order(page)]
    assert titles.count("Raise the vehicle") == 1
    assert titles.index("Raise the vehicle") < titles.index("Set the front band")
    assert titles.index("Set the front band") < titles.index("Lower the vehicle")
    assert "comes with" in next(line for line in order(page) if line.startswith("Raise"))
    page.locator("input[value=raise-vehicle]").uncheck()
    expect(page.get_by_text(re.compile("^Left out: Raise the vehicle, although"))).to_be_visible()


def test_the_card_holds_what_was_shown(choosing):
    page = choosing
    choices(page, "set-band")
    shown = [line.splitlines()[0] for line in order(page)]
    page.get_by_role("button", name="Add to the card").click()
    expect(page.get_by_role("heading", name="Before you start")).to_be_visible()
    events = stored_events(page, None)
    assert [e["value"]["procedure"]["title"] for e in events if e["kind"] == "add"] == shown


def test_what_was_fetched_is_kept_and_taken_back(page, site_url):
    card = fresh_card(page, site_url, "set-band")
    page.goto(f"{site_url}cards/#card/{card}/fetch")
    box = page.get_by_label("Inch-pound torque wrench")
    box.check()
    expect(page.get_by_text("RB has it")).to_be_visible()
    page.reload()
    expect(box).to_be_checked()
    box.uncheck()
    expect(page.get_by_text("RB has it")).to_have_count(0)
    page.reload()
    expect(page.get_by_role("heading", name="Before you start")).to_be_visible()
    expect(box).not_to_be_checked()


def test_a_look_alike_is_told_before_the_work(page, site_url):
    card = fresh_card(page, site_url, "rear-seal")
    page.goto(f"{site_url}cards/#card/{card}/fetch")
    part = page.get_by_role("group", name="Rear seal: which one is it?")
    expect(part.get_by_text("Not identified yet.")).to_be_visible()
    part.get_by_label("Late rear seal").check()
    expect(part.get_by_text(re.compile("^It is “Late rear seal”, told by RB"))).to_be_visible()
    (told,) = [e["value"] for e in stored_events(page, site_url) if e["kind"] == "identify"]
    assert told["variant"] == "Late rear seal"
    assert "outside diameter" in told["how"]


def test_a_calculator_knows_the_vehicle_and_writes_back(choosing, site_url):
    page = choosing
    choices(page, "staged-refill")
    page.get_by_role("button", name="Add to the card").click()
    expect(page.get_by_role("heading", name="Before you start")).to_be_visible()
    card = page.evaluate("location.hash").split("/")[1]
    steps = page.evaluate(
        """async ([root, card]) => {
            const { eventsOf } = await import(root + "assets/cards/record/store.js");
            const { foldCard, steps } = await import(root + "assets/cards/record/fold.js");
            return steps(foldCard(await eventsOf(card))).map(({ text, readings }) => ({
                calculates: text.html.includes("calculators/staged-fill/"),
                reads: readings.some(({ asked }) => asked.fluid === "in"),
            }));
        }""",
        [site_url, card],
    )
    go_to(page, site_url, card, 1 + next(n for n, step in enumerate(steps) if step["calculates"]))
    href = page.locator('.uh-card__do a[href*="staged-fill"]').first.get_attribute("href")
    assert "tyre=205" in href
    assert "axle=3.70" in href
    filling = 1 + next(n for n, step in enumerate(steps) if step["reads"])
    bare = f"{site_url}calculators/staged-fill/"
    page.goto(f"{bare}#card={card}/{filling}")
    expect(page.get_by_text("For the card of Marlow Drover, green")).to_be_visible()
    page.wait_for_selector("#calculator[data-answered]")
    expect(page.locator(".uh-write-back")).to_have_count(0)  # the example's answer is nobody's
    page.get_by_role("textbox", name="Drained volume").fill("4.0")
    page.locator(".uh-write-back button").first.click()
    expect(page.get_by_text(re.compile(r"^On the card: "))).to_be_visible()
    reading = [e for e in stored_events(page, site_url) if e["kind"] == "reading"][-1]
    assert reading["value"]["written"] == "3.5"  # 4.0 drained less 0.5 between the marks
    assert reading["value"]["from"].startswith("/calculators/staged-fill/")
    page.get_by_role("link", name="Back to the card").click()
    expect(page.locator(".uh-card__value").first).to_contain_text("3.5 litres")
