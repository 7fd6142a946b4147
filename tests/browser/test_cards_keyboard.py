"""A whole card by the keyboard alone: nothing needs a pointer, the focus is seen and never lost."""

from __future__ import annotations

import re
from collections import Counter
from pathlib import Path

import pytest
from card_filled import show
from card_hands import COMPLAINT, IDENTIFICATION, fresh_card, open_cards, stored_events, take_time
from playwright.sync_api import FileChooser, expect

pytestmark = pytest.mark.browser


PHOTO = Path(__file__).resolve().parents[2] / "pictures" / "card.png"
STEPS = 12
MOST = 120  # presses of Tab to anything on a screen

# What has the focus: its name, and whether somebody who looks can see where it is. The entry of a
# photo is not drawn itself; the button around it is.
FOCUS = """() => {
    const on = document.activeElement;
    if (!on || on === document.body) return null;
    const drawn = on.classList.contains("uh-unseen") ? on.parentElement : on;
    const { outlineStyle, outlineWidth, boxShadow } = getComputedStyle(drawn);
    const ring = outlineStyle !== "none" && parseFloat(outlineWidth) > 0;
    const box = drawn.getBoundingClientRect();
    const inView = box.bottom > 0 && box.top < innerHeight && box.width > 0;
    const label = on.labels?.[0]?.innerText ?? "";
    const name = on.getAttribute("aria-label") ?? (label || on.textContent);
    return { name: name.trim(), seen: inView && (ring || boxShadow !== "none") };
}"""


class Keyboard:
    """Somebody who has no pointer."""

    def __init__(self, page) -> None:
        self.page = page

    def focus(self) -> str:
        """What has the focus, which must be seen."""
        on = self.page.evaluate(FOCUS)
        assert on is not None, "the focus is lost"
        assert on["seen"], f"the focus is not seen on: {on['name']}"
        return on["name"]

    def to(self, name: str, key: str = "Tab") -> None:
        """Tab until something whose name begins with these words has the focus."""
        reached = []
        for _ in range(MOST):
            self.page.keyboard.press(key)
            on = self.page.evaluate(FOCUS)
            if on is None:  # between the page's end and its beginning
                continue
            assert on["seen"], f"the focus is not seen on: {on['name']}"
            reached.append(on["name"])
            if re.match(rf"{re.escape(name)}\b", on["name"]):
                return
        raise AssertionError(f"Tab does not reach {name!r}, but: {sorted(set(reached))}")

    def press(self, name: str, key: str = "Enter") -> None:
        """Go there and press it."""
        self.to(name)
        self.page.keyboard.press(key)

    def fill(self, name: str, words: str) -> None:
        """Go to an entry and write."""
        self.to(name)
        self.page.keyboard.type(words)


def test_a_card_is_started_without_a_pointer(page, site_url):
    hands = Keyboard(page)
    open_cards(page, site_url)
    hands.press("Start a card")
    expect(page.get_by_role("heading", name="Who are you?")).to_be_focused()
    hands.fill("Your initials", "RB")
    page.keyboard.press("Enter")
    expect(page.get_by_role("heading", name="A new card")).to_be_focused()
    hands.fill("Identification", IDENTIFICATION)
    hands.fill("Unit family", "Kestrel")
    hands.fill("Odometer", "84210 km")
    hands.fill("In the owner’s words", COMPLAINT)
    hands.press("Start the card")
    expect(page.get_by_role("heading", name="Add procedures")).to_be_focused()
    hands.press("Bands")
    hands.press("Set the front band", "Space")
    hands.press("Add to the card")
    expect(page.get_by_role("heading", name="Before you start")).to_be_focused()
    hands.press("Begin with the first step")
    expect(page.locator(".uh-card__title")).to_be_focused()
    assert hands.focus().startswith("Step 1 of")


def test_a_card_is_worked_and_closed_without_a_pointer(new_page, site_url):
    page = new_page
    hands = Keyboard(page)
    card = fresh_card(page, site_url, "set-band")
    show(page, site_url, card, "1")
    take_a_photo(hands)
    write_a_finding(hands)
    for number in range(1, STEPS + 1):
        work_through(hands, number)
    expect(page.locator(".uh-card__left")).to_have_text("Nothing is left. Close the card.")
    hands.press("Close the card")
    expect(page.get_by_role("heading", name="Close the card")).to_be_focused()
    hands.press("Close the card")
    expect(page.get_by_text("Closed by RB")).to_be_visible()
    assert hands.focus() == "Close the card"
    hands.press("The owner’s sheet")
    expect(page.get_by_role("heading", name="For the owner")).to_be_focused()
    kinds = Counter(event["kind"] for event in stored_events(page, site_url))
    once = dict.fromkeys(["start", "add", "photo", "finding", "close"], 1)
    assert kinds == {**once, "reading": 2, "tick": STEPS, "check": 3}


def take_a_photo(hands):
    """A photo of the step in hand."""
    asked: list[FileChooser] = []
    hands.page.on("filechooser", lambda chooser: asked.append(chooser))  # noqa: PLW0108 - Playwright marks it
    hands.to("Photo")
    for _ in range(20):  # the browser is told a moment later that somebody takes its choosers
        hands.page.keyboard.press("Space")
        hands.page.wait_for_timeout(500)
        if asked:
            break
    asked[0].set_files(PHOTO)
    expect(hands.page.locator(".uh-photos li")).to_have_count(1)
    hands.focus()


def write_a_finding(hands):
    """A finding on the step in hand."""
    page = hands.page
    hands.press("Finding")
    assert hands.focus().startswith("What did you find?")
    page.keyboard.type("The rear joint has play")
    hands.press("Before it is driven", "Space")
    hands.press("Write it down")
    expect(page.locator(".uh-finding__what")).to_have_text("The rear joint has play")
    hands.focus()


def work_through(hands, number):
    """The readings of a step, its tick and its second check."""
    page = hands.page
    expect(page.locator(".uh-card__title")).to_have_text(f"Step {number} of {STEPS}")
    while page.locator(".uh-card__reading input").count():
        hands.fill("Turns", "1.5")
        page.keyboard.press("Enter")
        expect(page.locator(".uh-card__reading input")).to_have_count(0)
        hands.focus()
    take_time(page)
    if not hands.focus().startswith(f"Step {number}: "):
        hands.to(f"Step {number}")
    page.keyboard.press("Enter")
    page.wait_for_function(
        """number => document.querySelector("button.uh-tick").dataset.state !== "storing" &&
        !document.querySelector("button.uh-tick").ariaLabel.startsWith(`Step ${number}: `) ||
        document.querySelector(".uh-card__ask") !== null ||
        document.querySelector(".uh-card__left").textContent.startsWith("Nothing")""",
        arg=number,
    )
    if page.locator(".uh-card__ask").count():
        assert hands.focus().startswith("Second check: initials")
        page.keyboard.type("SL")
        page.keyboard.press("Enter")
        expect(page.locator(".uh-card__ask")).to_have_count(0)
    hands.focus()
