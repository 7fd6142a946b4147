"""Fault finding on a job card: results stored before they show, readings that count, the cause."""

from __future__ import annotations

import json
from urllib.parse import urlencode

import pytest
from axe_core import findings
from card_hands import on_the_site, open_cards, stored_events
from desk_answers import answered_at_the_desk
from playwright.sync_api import expect
from underhoist_calculators import door

pytestmark = pytest.mark.browser


COMPLAINED = """async ({ root, procedures }) => {
    const { append, remember } = await import(root + "assets/cards/record/store.js");
    const { draft } = await import(root + "assets/cards/record/events.js");
    const card = crypto.randomUUID();
    const does = (kind, value) => append(draft({ card, who: "RB", kind, value }));
    await remember("initials", "RB");
    const vehicle = {
        family: "kestrel-3", family_title: "Kestrel 3", identification: "Marlow Drover, green",
        tyre: "", axle: "", odometer: "84210 km",
    };
    await does("start", { vehicle, complaint: "It hangs on", fault: "late-shifts" });
    for (const id of procedures) {
        const procedure = await (await fetch(root + "cards/data/" + id + ".json")).json();
        await does("add", { procedure });
    }
    return card;
}"""
FULL = """() => {
    const add = IDBObjectStore.prototype.add;
    window.free = () => { IDBObjectStore.prototype.add = add; };
    IDBObjectStore.prototype.add = () => { throw new DOMException("", "QuotaExceededError"); };
}"""
SLOW = 60_000
"""ms; Python may have to come up, and the machine may be busy."""


def complained_card(page, site_url, *procedures):
    """Store a card that began with the complaint "late-shifts"; returns its id."""
    on_the_site(page, site_url)
    return page.evaluate(COMPLAINED, {"root": site_url, "procedures": procedures})


def search(page, site_url, card, answered="yes"):
    """Show the fault finding of a card and wait until the next check stands there."""
    page.goto("about:blank")
    open_cards(page, site_url, f"#card/{card}/fault")
    expect(page.locator(f".uh-cause[data-answered={answered}]")).to_be_visible(timeout=SLOW)


def give(page, result):
    """Give the next check this result and wait until it stands among those done."""
    done = page.locator(".uh-done li").count()
    page.locator(f".uh-next .uh-result[data-result='{result}']").click()
    expect(page.locator(".uh-done li")).to_have_count(done + 1, timeout=SLOW)


def results(page, site_url):
    """The results among the stored events."""
    return [event for event in stored_events(page, site_url) if event["kind"] == "result"]


def decided_by(page, site, check, *deciders):
    """Serve the complaint with what decides one check."""
    file = site / "fault" / "data" / "late-shifts.json"
    data = json.loads(file.read_text(encoding="utf-8"))
    for family in data["by_family"].values():
        for each in family["checks"].values():
            each["decided_by"] = []
        if check in family["checks"]:
            family["checks"][check]["decided_by"] = list(deciders)
    body = json.dumps(data)
    page.route("**/fault/data/late-shifts.json", lambda route: route.fulfill(body=body))


def test_a_result_shows_once_it_is_stored_and_its_procedure_comes_in_one_tap(page, site_url):
    card = complained_card(page, site_url)
    search(page, site_url, card)
    assert findings(page) == []
    first = page.locator(".uh-next h3").inner_text()
    page.evaluate(FULL)
    page.locator(".uh-next .uh-result[data-result=good]").click()
    expect(page.get_by_text("Not stored yet.")).to_be_visible()
    assert page.locator(".uh-done").count() == 0
    assert results(page, site_url) == []
    page.evaluate("free()")
    page.get_by_role("button", name="Try again").click()
    expect(page.locator(".uh-done li")).to_contain_text("Good, by RB", timeout=SLOW)
    [event] = results(page, site_url)
    assert event["value"]["result"] == "good"
    assert event["value"]["minutes"] > 0
    assert page.locator(".uh-next h3").inner_text() != first
    page.get_by_role("button", name="Undo Good").click()
    expect(page.locator(".uh-next h3")).to_have_text(first, use_inner_text=True, timeout=SLOW)
    expect(page.locator(".uh-done")).to_have_count(0)
    page.locator(".uh-next").get_by_role("button", name="Put on the card").first.click()
    on_card = page.locator(".uh-next").get_by_role("link", name="Open on the card").first
    expect(on_card).to_be_visible(timeout=SLOW)
    on_card.click()
    expect(page.locator("button.uh-tick")).to_be_visible()
    expect(page.get_by_role("link", name="Fault finding").first).to_be_visible()


def test_a_cause_found_brings_what_mends_it_and_is_told_to_the_owner(page, site_url):
    answered_at_the_desk(page)
    card = complained_card(page, site_url)
    search(page, site_url, card)
    for _ in range(9):
        if page.locator(".uh-next").count() == 0:
            break
        give(page, "bad" if "modulator" in page.locator(".uh-next h3").inner_text() else "good")
    page.get_by_role("button", name="Write it down for the owner").first.click()
    written = page.get_by_label("What did you find?").input_value()
    assert "It is behind “It hangs on”" in written
    page.get_by_role("button", name="Write it down", exact=True).click()
    expect(page.get_by_text("Written down for the owner by RB").first).to_be_visible(timeout=SLOW)
    page.get_by_role("button", name="Add its procedures to the card").first.click()
    expect(page.locator(".uh-cause__said")).to_contain_text("On the card:", timeout=SLOW)
    assert any(event["kind"] == "add" for event in stored_events(page, site_url))
    assert findings(page) == []
    page.evaluate("hash => { location.hash = hash; }", f"#card/{card}/sheet")
    sheet = page.locator(".uh-sheet__fault")
    expect(sheet).to_contain_text("in 100 by what the checks told")
    expect(sheet.locator("ol > li").first).to_contain_text("minutes")


def test_nothing_fits_and_the_senior_tech_is_asked(page, site_url):
    answered_at_the_desk(page)
    card = complained_card(page, site_url)
    search(page, site_url, card)
    page.get_by_role("button", name="None of these").click()
    page.get_by_role("button", name="Hand back").click()
    expect(page.locator(".uh-ask")).to_contain_text("Asked by RB", timeout=SLOW)
    page.get_by_role("link", name="Questions for the senior").click()
    page.get_by_role("button", name="Answer").click()
    page.get_by_label("Your answer").fill("Look at the tyres")
    page.get_by_role("button", name="Answer", exact=True).click()
    expect(page.get_by_text("Every question is answered.")).to_be_visible()
    search(page, site_url, card)
    expect(page.get_by_text("Answered by RB")).to_be_visible()
    expect(page.locator(".uh-next")).to_be_visible()


def test_a_reading_of_the_card_counts_and_an_own_result_goes_before_it(page, site, site_url):
    answered_at_the_desk(page)
    turns = {"kind": "reading", "procedure": "set-band", "reading": "set-band/turns-to-seat"}
    decided_by(page, site, "vacuum-at-the-modulator", turns)
    card = complained_card(page, site_url, "set-band")
    page.evaluate(
        """async ({ root, card }) => {
            const { append, eventsOf } = await import(root + "assets/cards/record/store.js");
            const { draft } = await import(root + "assets/cards/record/events.js");
            const add = (await eventsOf(card)).find(({ kind }) => kind === "add");
            const { steps } = add.value.procedure;
            const has = (step) => step.readings.some(({ id }) => id === "set-band/turns-to-seat");
            const { number } = steps.find(has);
            const value = {
                job: add.id, step: number, reading: "set-band/turns-to-seat", when: "as found",
                written: "9", reason: "Worn",
            };
            await append(draft({ card, who: "SL", kind: "reading", value }));
        }""",
        {"root": site_url, "card": card},
    )
    search(page, site_url, card)
    done = page.locator(".uh-done li")
    expect(done).to_contain_text("Bad, from the reading")
    expect(done).to_contain_text("9 turns, by SL")
    assert done.get_by_role("button").count() == 0
    page.get_by_text("I see it otherwise").click()
    page.locator(".uh-cause__list .uh-result[data-result=good]").click()
    expect(done).to_contain_text("Good, by RB", timeout=SLOW)


def test_where_python_does_not_start_results_are_recorded_in_the_written_order(page, site_url):
    page.route("**/runtime/**", lambda route: route.abort())
    card = complained_card(page, site_url)
    search(page, site_url, card, answered="failed")
    checks = page.locator(".uh-cause__list > li")
    assert checks.count() >= 4
    checks.nth(1).locator(".uh-result[data-result='not done']").click()
    expect(checks.nth(1)).to_contain_text("Not done, by RB", timeout=SLOW)
    assert [event["value"]["result"] for event in results(page, site_url)] == ["not done"]
    expect(page.get_by_role("link", name="The complaint’s page, with the table")).to_be_visible()
    assert findings(page) == []


def test_what_the_complaint_s_page_found_goes_into_a_new_card(page, site_url):
    answered_at_the_desk(page)
    open_cards(page, site_url)
    page.evaluate(
        """async (root) => {
            const { remember } = await import(root + "assets/cards/record/store.js");
            await remember("initials", "RB");
            const results = [{ check: "read-the-fluid", result: "good" }];
            const handed = { fault: "late-shifts", family: "kestrel-3", results, at: "" };
            await remember("fault hand-over", handed);
        }""",
        site_url,
    )
    page.goto("about:blank")
    open_cards(page, site_url, "#new/late-shifts")
    expect(page.get_by_label("Unit family")).to_have_value("kestrel-3")
    expect(page.locator("input[name=fault][value=late-shifts]")).to_be_checked()
    page.get_by_label("Identification").fill("Tern Carrier")
    page.get_by_label("Odometer").fill("1 km")
    page.get_by_role("button", name="Start the card").click()
    expect(page.locator(".uh-done li")).to_contain_text("Good, by RB", timeout=SLOW)
    assert [event["value"]["check"] for event in results(page, site_url)] == ["read-the-fluid"]


def test_a_calculator_s_answer_is_kept_on_the_card(page, site, site_url):
    answered_at_the_desk(page)
    shifts = {"kind": "calculator", "calculator": "shift-check", "bad": [], "good": []}
    entries = door.example("shift-check")
    pattern = door.run("shift-check", entries)["answer"]["values"]["pattern"]
    decided_by(page, site, "drive-it", {**shifts, "bad": [pattern]})
    card = complained_card(page, site_url)
    own = f"calculators/shift-check/?{urlencode(entries)}#card={card}/fault/late-shifts"
    page.goto(site_url + own)
    page.get_by_role("button", name="Keep this answer on the card").click(timeout=SLOW)
    expect(page.locator(".uh-write-back--whole")).to_contain_text("On the card:")
    event = stored_events(page, site_url)[-1]
    assert event["kind"] == "calculation"
    assert event["value"]["pattern"] == pattern
    page.locator(".uh-write-back--whole").get_by_role("link", name="Back to the card").click()
    expect(page.locator(".uh-cause")).to_be_visible()
    rivals = event["value"]["rivals"]
    page.unroute("**/fault/data/late-shifts.json")
    decided_by(page, site, "drive-it", {**shifts, "bad": [pattern, *rivals]})
    search(page, site_url, card)
    expect(page.locator(".uh-done li")).to_contain_text("Bad, from")
