"""Finding a cause on a complaint's page: as Python at the desk says, and kept."""

from __future__ import annotations

import json
import re

import pytest
from axe_core import findings
from desk_answers import answered_at_the_desk
from fault_hands import answered, give, next_check, told_at_the_desk
from offline_hands import WAIT
from playwright.sync_api import expect

pytestmark = pytest.mark.browser

FAULT = "slips"
ASK = """async ([client, complaint, all]) => {
    const {standing} = await import(client);
    const told = [];
    for (const pairs of all)
        told.push(await standing(complaint, pairs.map(([check, result]) => ({check, result}))));
    return told;
}"""


@pytest.fixture(scope="module")
def data(site):
    return json.loads((site / "fault" / "data" / f"{FAULT}.json").read_text(encoding="utf-8"))


def test_in_every_state_of_two_results_the_phone_says_what_the_desk_says(same_page, site_url, data):
    family = data["families"][-1]["id"]
    complaint = data["by_family"][family]["complaint"]
    first, second = (each["id"] for each in complaint["checks"][:2])
    words = ("good", "bad", "not done")
    states = [[]] + [[(first, one), (second, two)] for one in words for two in words]
    same_page.goto(site_url)
    told = same_page.evaluate(ASK, [f"{site_url}assets/fault/client.js", complaint, states])
    assert told == [told_at_the_desk(data, family, results) for results in states]


def test_what_stands_there_before_the_script_is_what_the_script_says(browser, site_url, data):
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(f"{site_url}faults/{FAULT}/")
    told = told_at_the_desk(data, data["families"][0]["id"])
    expect(next_check(page)).to_have_text(f"Next check {told['next']['name']}")
    expect(page.locator(".uh-checks .uh-order").first).to_be_visible()
    assert page.locator("#fault").get_by_role("button").count() == 0
    context.close()


def test_a_cause_is_found_and_undone_with_the_focus_on_what_comes_next(page, site_url, data):
    answered_at_the_desk(page)
    page.goto(f"{site_url}faults/{FAULT}/")
    answered(page)
    family = data["families"][0]["id"]
    other = told_at_the_desk(data, family)["others"][0]
    row = page.locator(".uh-others li").first
    expect(row.locator("summary")).to_have_text(f"{other['name']} {other['instead']}")
    row.locator("summary").click()
    row.locator(".uh-result[data-result=good]").click()
    expect(page.locator(".uh-done li")).to_have_text(re.compile(re.escape(other["name"])))
    give(page, "bad", 2)
    lead = page.locator(":is(.uh-next, .uh-standing__found, .uh-ask):not([hidden]) > h3").first
    expect(lead).to_be_focused()
    assert findings(page) == []
    for left in (1, 0):
        page.locator(".uh-done .uh-button").first.click()
        expect(page.locator(".uh-done li")).to_have_count(left)
    told = told_at_the_desk(data, family)
    expect(next_check(page)).to_have_text(f"Next check {told['next']['name']}")
    for box in page.locator(".uh-next .uh-result").evaluate_all(
        "all => all.map(each => each.getBoundingClientRect().height)"
    ):
        assert box >= 64


def test_none_of_these_stops_and_asks_until_the_reader_goes_on(page, site_url):
    answered_at_the_desk(page)
    page.goto(f"{site_url}faults/{FAULT}/")
    answered(page)
    page.get_by_role("button", name="None of these").click()
    expect(page.locator(".uh-ask > h3")).to_be_focused()
    expect(page.locator(".uh-ask")).to_contain_text("Take both to the senior tech.")
    expect(page.locator(".uh-next")).to_have_count(0)
    assert findings(page) == []
    page.reload()
    expect(page.locator(".uh-ask")).to_be_visible(timeout=WAIT)
    page.get_by_role("button", name="Go on with the checks").click()
    expect(page.locator(".uh-next")).to_be_visible()


def test_another_family_has_its_own_results_and_is_remembered(page, site_url, data):
    answered_at_the_desk(page)
    page.goto(f"{site_url}faults/{FAULT}/")
    answered(page)
    give(page, "good", 1)
    second = data["families"][1]
    page.get_by_label("Unit family of the vehicle").select_option(second["title"])
    told = told_at_the_desk(data, second["id"])
    expect(next_check(page)).to_have_text(f"Next check {told['next']['name']}")
    expect(page.locator(".uh-done")).to_have_count(0)
    page.reload()
    answered(page)
    expect(page.get_by_label("Unit family of the vehicle")).to_have_value(second["id"])


def test_where_python_cannot_start_the_page_says_so_and_keeps_the_table(page, site_url):
    page.route("**/runtime/**", lambda route: route.abort())
    page.goto(f"{site_url}faults/{FAULT}/")
    page.locator("#fault[data-answered=failed]").wait_for(timeout=WAIT)
    expect(page.locator(".uh-standing__outlook")).to_contain_text("cannot be worked out")
    expect(page.locator(".uh-checks .uh-order").first).to_be_visible()


def test_it_is_taken_into_a_job_card(page, site_url):
    answered_at_the_desk(page)
    page.goto(f"{site_url}faults/{FAULT}/")
    answered(page)
    give(page, "good", 1)
    page.get_by_role("button", name="Take this into a job card").click()
    page.wait_for_url(f"**/cards/#new/{FAULT}")
