"""A newer text of a procedure: announced in one line, shown beside the card's, taken on consent."""

from __future__ import annotations

import json

import pytest
from axe_core import findings
from card_hands import begun_card, go_to, open_cards, stored_events, tick, tick_off
from playwright.sync_api import expect

pytestmark = pytest.mark.browser


WAS, NOW = "120 pound-force inches", "108 pound-force inches"
LINE = (
    "The manual has a newer text of Set the front band: Band adjuster seat: now 108 pound-force "
    "inches, it was 120 pound-force inches."
)


@pytest.fixture
def manual(page, site):
    """Serves the manual as a later build would: another torque and another first step."""
    return LaterManual(page, site)


class LaterManual:
    """The site's data, changed on the way to the page once `build` was called."""

    def __init__(self, page, site):
        self.page = page
        data = site / "cards" / "data"
        self.index = json.loads((data / "index.json").read_text(encoding="utf-8"))
        self.text = json.loads((data / "set-band.json").read_text(encoding="utf-8"))
        self.was = self.text["revision"]

    def build(self, *, told=None, date="2099-01-01", revision="feedbeef01"):
        """Serve a later build; `told` is what it wrote down of the change, None for nothing."""
        first, *_ = self.text["steps"]
        first["html"] = first["html"].replace("Wipe", "Wipe and dry")
        first["text"] = first["text"].replace("Wipe", "Wipe and dry")
        for step in self.text["steps"]:
            step["html"] = step["html"].replace(">120<", ">108<")
            step["text"] = step["text"].replace("120 lbf", "108 lbf")
            for torque in step["torques"]:
                torque["value"] = torque["value"].replace(WAS, NOW)
        self.text |= {"revision": revision, "date": date}
        entry = next(one for one in self.index["procedures"] if one["id"] == "set-band")
        entry["revision"] = revision
        self.serve("**/cards/data/index.json", self.index)
        self.serve("**/cards/data/set-band.json", self.text)
        self.serve("**/changes/data/set-band.json", told)

    def serve(self, address, data):
        """Answer with the data, or with nothing there."""
        self.page.route(
            address,
            lambda route: (
                route.fulfill(status=404)
                if data is None
                else route.fulfill(body=json.dumps(data), content_type="application/json")
            ),
        )


def news(page):
    """The line."""
    return page.locator(".uh-card__news")


ANSWERED = """async ([root, card]) => {
    const { eventsOf } = await import(root + "assets/cards/record/store.js");
    const { foldCard } = await import(root + "assets/cards/record/fold.js");
    const { newsOf } = await import(root + "assets/cards/renew/news.js");
    await newsOf(foldCard(await eventsOf(card)));
}"""


def says_nothing(page, site_url, card):
    """Nothing stands there once the manual has answered the page's own question."""
    page.evaluate(ANSWERED, [site_url, card])
    expect(news(page)).to_have_text("")


def test_a_card_by_the_manual_s_own_text_says_nothing(page, site_url):
    card = begun_card(page, site_url, "set-band")
    says_nothing(page, site_url, card)


def test_a_changed_torque_is_said_first_and_taken_on_consent(page, site_url, manual):
    card = begun_card(page, site_url, "set-band")
    for _ in range(3):
        tick_off(page)
    told = [
        {
            "revision": "feedbeef01",
            "words": ["step 1 was reworded", "Band adjuster seat (band-seat): 120 -> 108 lbf·in"],
        },
        {"revision": manual.was, "words": []},
    ]
    manual.build(told=told)
    open_cards(page, site_url, f"#card/{card}")
    page.reload()
    expect(news(page)).to_have_text(f"{LINE} And 1 more change.")
    expect(page.locator(".uh-card__title")).to_have_text("Step 4 of 12")
    assert tick(page).bounding_box()["y"] < 844, "the line is not in the way of the work"

    news(page).get_by_role("link").click()
    view = page.locator(".uh-renew")
    expect(view.locator("ul").first.locator("li")).to_have_text(
        [f"{LINE.partition(': ')[2]}", "Step 1 was reworded"]
    )
    expect(view).to_contain_text(
        "Step 1 of the card’s text is done already, and changed: the newer text asks for it anew."
    )
    expect(view.get_by_role("heading", name="Step 7: changed")).to_be_visible()
    expect(view).to_contain_text("Steps 2 to 6 and 8 to 12 of the newer text: as before.")

    view.get_by_role("link", name="Keep the text of the card").click()
    expect(page.locator(".uh-card__left")).to_have_text("Left: 9 of 12 steps.")
    assert all(event["kind"] != "renew" for event in stored_events(page, site_url))

    news(page).get_by_role("link").click()
    page.get_by_role("button", name="Work by the newer text").click()
    expect(page.locator(".uh-card__left")).to_have_text("Left: 10 of 12 steps.")
    expect(page.locator(".uh-card__title")).to_have_text("Step 1 of 12")
    expect(news(page)).to_have_text("")
    page.get_by_text("From the earlier text").click()
    expect(page.locator("details", has_text="From the earlier text")).to_contain_text("Done by RB")
    go_to(page, site_url, card, 7)
    expect(page.locator(".uh-card__do")).to_contain_text("108")
    renewed = stored_events(page, site_url)[-1]
    assert (renewed["kind"], renewed["revision"]) == ("renew", "feedbeef01")
    assert renewed["value"]["words"][0] == LINE.partition(": ")[2]

    page.evaluate("hash => { location.hash = hash; }", f"#card/{card}/jobs")
    page.get_by_role("button", name="Undo the newer text").click()
    expect(page.get_by_text("Newer text taken by")).to_have_count(0)
    expect(page.get_by_text("Left: 9 of 12 steps.").first).to_be_visible()
    assert stored_events(page, site_url)[-1]["value"] == {"of": renewed["id"]}


def test_axe_finds_nothing_where_both_texts_stand(page, site_url, manual):
    page.set_viewport_size({"width": 360, "height": 640})
    card = begun_card(page, site_url, "set-band")
    manual.build()
    page.reload()
    news(page).get_by_role("link").wait_for()
    assert findings(page) == [], "the line"
    open_cards(page, site_url, f"#card/{card}/newer/1")
    page.locator(".uh-renew").wait_for()
    assert findings(page) == [], "both texts"
    assert page.evaluate("document.documentElement.scrollWidth") <= 360


def test_without_what_changed_both_texts_are_compared(page, site_url, manual):
    card = begun_card(page, site_url, "set-band")
    manual.build()
    open_cards(page, site_url, f"#card/{card}/sheet")
    page.reload()
    expect(news(page)).to_contain_text(f"{LINE} And 2 more changes.")
    news(page).get_by_role("link").click()
    expect(page.locator(".uh-renew ul").first.locator("li")).to_have_text(
        [
            LINE.partition(": ")[2],
            "Step 1 now says: Wipe and dry the adjuster and the case around it clean.",
            "Step 7 now says: Seat the screw: 108 lbf·in.",
        ]
    )


@pytest.mark.parametrize("older", [{"date": "2001-01-01"}, {"told": "older"}])
def test_a_phone_with_an_older_manual_does_not_call_it_newer(page, site_url, manual, older):
    card = begun_card(page, site_url, "set-band")
    if older.get("told"):
        revisions = [{"revision": each, "words": []} for each in (manual.was, "feedbeef01")]
        older = {"told": revisions}
    manual.build(**older)
    page.reload()
    expect(tick(page)).to_be_visible()
    says_nothing(page, site_url, card)
    open_cards(page, site_url, f"#card/{card}/newer/1")
    expect(page.locator("#cards")).to_contain_text(
        "The card works by the text that the manual has now."
    )


def test_a_closed_card_is_left_alone(page, site_url, manual):
    card = begun_card(page, site_url, "set-band")
    page.evaluate(
        """async ([root, card]) => {
            const { append } = await import(root + "assets/cards/record/store.js");
            const { draft } = await import(root + "assets/cards/record/events.js");
            await append(draft({ card, who: "RB", kind: "close", value: {} }));
        }""",
        [site_url, card],
    )
    manual.build()
    page.reload()
    expect(page.locator(".uh-card__left")).to_have_text("Closed by RB.")
    says_nothing(page, site_url, card)


def test_a_newer_text_on_a_full_phone_waits_and_is_taken_once(page, site_url, manual):
    card = begun_card(page, site_url, "set-band")
    manual.build()
    open_cards(page, site_url, f"#card/{card}/newer/1")
    page.reload()
    page.evaluate(
        """() => {
            const add = IDBObjectStore.prototype.add;
            window.mend = () => { IDBObjectStore.prototype.add = add; };
            IDBObjectStore.prototype.add = () => {
                throw new DOMException("", "QuotaExceededError");
            };
        }"""
    )
    page.get_by_role("button", name="Work by the newer text").click()
    expect(page.locator("#cards").get_by_role("alert")).to_contain_text(
        "Not stored yet. The phone has no room left for records."
    )
    page.evaluate("window.mend()")
    page.get_by_role("button", name="Try again").click()
    expect(page.locator(".uh-card__title")).to_be_visible()
    assert [e["kind"] for e in stored_events(page, site_url)] == ["start", "add", "renew"]
