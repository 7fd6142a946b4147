"""The manual in one file, opened from the disk: no server, no network, calculators that answer."""

from __future__ import annotations

import json
from pathlib import Path
from urllib.parse import urlencode, urlsplit
from urllib.request import url2pathname

import pytest
from axe_core import AXE, RUN, TAGS
from playwright.sync_api import expect
from underhoist_calculators.fault_finding import door

from underhoist.bound import Choice, chosen, source
from underhoist.pack import pack
from underhoist.pages.complaint_data import complaint_files

pytestmark = pytest.mark.browser

ROOT = Path(__file__).resolve().parents[2]
CASES = ROOT / "tests" / "published" / "door_cases.json"
BOOT = 60_000
"""Longest wait, in ms, for Python to come up on a busy machine."""
FAULT = "slips"
ANSWERED = f"[id='faults/{FAULT}'] section[data-answered=yes]"


@pytest.fixture(scope="module")
def packed():
    """The demo manual and what of it is in the file."""
    site = source(ROOT).site
    return site, chosen(site, Choice(families=("kestrel-3",)))


@pytest.fixture(scope="module")
def address(tmp_path_factory, packed):
    file = tmp_path_factory.mktemp("packed") / "manual.html"
    file.write_bytes(pack(*packed, ROOT / "node_modules").content)
    return file.as_uri()


@pytest.fixture(scope="module")
def unfolded(browser, browser_context_args, address):
    """The file on a phone, opened once: it takes a second, and Python another."""
    context = browser.new_context(**browser_context_args)
    page = context.new_page()
    page.outside = []
    page.on(
        "console", lambda said: page.outside.append(said.text) if said.type == "error" else None
    )
    page.on("pageerror", lambda error: page.outside.append(str(error)))
    page.on("request", lambda asked: page.outside.append(asked.url)
            if not asked.url.startswith((address, "data:", "blob:")) else None)  # fmt: skip
    page.goto(address)
    expect(page).to_have_title("Contents - Saltmarsh Lane manual")
    yield page
    context.close()


@pytest.fixture
def opened(unfolded, address):
    """That file at its contents, and what from now on goes wrong or is asked for outside it."""
    go(unfolded, address, "contents")
    expect(unfolded).to_have_title("Contents - Saltmarsh Lane manual")
    unfolded.outside.clear()
    return unfolded


def go(page, address, place):
    page.goto(f"{address}#{place}")


def answer_to(page, address, case):
    """Open the calculator filled in, and return the first line of its answer."""
    name = case["calculator"]
    go(page, address, f"calculators/{name}?{urlencode(case['entries'])}")
    here = page.locator(f'div[data-calculator="{name}"]')
    expect(here.locator(".uh-answer__summary")).to_have_text(case["summary"], timeout=BOOT)


def test_calculators_give_the_same_answers_as_at_the_desk(opened, address):
    """A sample of five calculators; benchmarks/handout.py asks all."""
    sample = {}
    for case in json.loads(CASES.read_text(encoding="utf-8")):
        inside = opened.locator(f'div[data-calculator="{case["calculator"]}"]').count()
        if case["ok"] and case["summary"] and inside:
            sample.setdefault(case["calculator"], case)
    assert len(sample) >= 3
    for case in list(sample.values())[:5]:
        answer_to(opened, address, case)
    assert opened.outside == []


def test_a_plate_opens_its_calculator_filled_in_and_back_leads_back(opened, address):
    go(opened, address, "kestrel-3/set-band.step-7")
    expect(opened).to_have_title("Set the front band - Saltmarsh Lane manual")
    expect(opened.locator("[id='kestrel-3/set-band.step-7']")).to_be_in_viewport()
    opened.locator("[id='kestrel-3/set-band'] .uh-plate__link").first.click()
    expect(opened).to_have_title("Torque units - Saltmarsh Lane manual")
    number = opened.locator("[id='calculators/torque-units.torque']")
    expect(number).to_have_value("120")
    here = opened.locator("div[data-calculator=torque-units][data-answered=yes]")
    expect(here).to_be_visible(timeout=BOOT)
    number.fill("150")
    expect(here.locator(".uh-answer__summary")).to_contain_text("150 lbf·in is")
    opened.go_back()
    expect(opened).to_have_title("Set the front band - Saltmarsh Lane manual")
    assert opened.outside == []


def test_the_line_at_the_bottom_leads_to_the_answer_of_its_own_calculator(opened, address):
    for name in ("torque-units", "staged-fill"):
        go(opened, address, f"calculators/{name}")
        here = opened.locator(f"div[data-calculator={name}][data-answered=yes]")
        expect(here).to_be_visible(timeout=BOOT)
    assert opened.evaluate(TWICE) == []
    field = here.locator("form.uh-calc input").first
    field.fill("4.4")
    field.press("Tab")  # what was entered goes into the address
    field.focus()
    here.locator(".uh-answer__now").get_by_role("link").click()
    expect(here.locator(".uh-answer__summary")).to_be_in_viewport()
    opened.reload()
    expect(opened).to_have_title("Staged fill - Saltmarsh Lane manual")
    expect(field).to_have_value("4.4")


def test_the_search_leads_within_the_file(opened):
    opened.get_by_label("Search this file").fill("seat the screw")
    opened.locator("#results a", has_text="Set the front band").first.click()
    expect(opened).to_have_title("Set the front band - Saltmarsh Lane manual")
    assert opened.outside == []


def test_one_page_is_shown_at_a_time_and_none_is_wider_than_the_phone(opened, address):
    shown = "els => els.filter((each) => !each.hidden).map(({id}) => id)"
    assert opened.locator("[data-page]").evaluate_all(shown) == ["contents"]
    for place in ("this-file", "kestrel-3/set-band", "families/kestrel-3"):
        go(opened, address, place)
        expect(opened.locator(f"[id='{place}']")).to_be_visible()
        assert opened.locator("[data-page]").evaluate_all(shown) == [place]
        assert opened.evaluate("document.documentElement.scrollWidth") <= 390
    assert opened.outside == []


TAKE_AWAY = """() => {
    window.away = [...document.querySelectorAll("[data-page][hidden]")].map((page) => {
        const place = document.createComment("");
        page.replaceWith(place);
        return [place, page];
    });
}"""
PUT_BACK = "() => { for (const [place, page] of window.away) place.replaceWith(page); }"
TWICE = """() => {
    const ids = [...document.querySelectorAll("[id]")].map(({id}) => id);
    return ids.filter((id, at) => ids.indexOf(id) < at);
}"""


def test_axe_finds_nothing_in_the_file(opened, address):
    """The pages that are not shown are taken away: axe walks over them, and looks at none."""
    assert opened.evaluate(TWICE) == []
    opened.evaluate(AXE.read_text(encoding="utf-8"))
    for place in ("contents", "kestrel-3/set-band", f"faults/{FAULT}", "this-file"):
        go(opened, address, place)
        expect(opened.locator(f"[id='{place}']")).to_be_visible()
        opened.evaluate(TAKE_AWAY)
        found = opened.evaluate(RUN, TAGS)
        opened.evaluate(PUT_BACK)
        assert len(found["passes"]) > 15
        assert [(fault["id"], place) for fault in found["violations"]] == []


def test_without_script_everything_can_be_read(browser, address):
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(address)
    expect(page.get_by_role("heading", name="Job cards are not in it")).to_be_visible()
    expect(page.get_by_role("heading", name="Set the front band", level=1)).to_be_visible()
    expect(page.locator("#search")).to_be_hidden()
    context.close()


@pytest.fixture(scope="module")
def complaint(packed):
    """What the file knows of a complaint on the family, as the site would keep it."""
    site, sheets = packed
    by_address = {each.address: each for each in sheets}
    files = {Path(path).stem: json.loads(text) for path, text in complaint_files(site, by_address)}
    return files[FAULT]["by_family"]["kestrel-3"]["complaint"]


def test_the_next_check_is_named_in_the_file_as_at_the_desk(opened, address, complaint):
    go(opened, address, f"faults/{FAULT}")
    here = opened.locator(f"[id='faults/{FAULT}']")
    expect(here).to_contain_text("Nothing is recorded here")
    results: list[tuple[str, str]] = []
    for result in ("good", "not done", "good"):
        opened.locator(ANSWERED).wait_for(timeout=BOOT)
        told = door.run(complaint, results, 1_000)
        expect(here.locator(".uh-next > h3")).to_have_text(f"Next check {told['next']['name']}")
        expect(here.locator(".uh-standing__outlook")).to_have_text(told["outlook"])
        here.locator(f".uh-next [data-result='{result}']").click()
        results.append((told["next"]["id"], result))
        expect(here.locator(".uh-done li")).to_have_count(len(results))
    expect(here.get_by_role("button", name="Take this into a job card")).to_have_count(0)
    opened.reload()  # The address line holds the results, and nothing else does.
    expect(here.locator(".uh-done li")).to_have_count(len(results), timeout=BOOT)
    told = door.run(complaint, results, 1_000)
    expect(here.locator(".uh-next > h3")).to_have_text(f"Next check {told['next']['name']}")
    assert opened.evaluate("async () => (await indexedDB.databases()).length") == 0
    assert opened.evaluate("localStorage.length") == 0
    assert opened.outside == []


def test_a_way_leads_within_the_file_and_back_leads_back_to_the_results(opened, address):
    """Of another complaint: results are kept as long as the file is open."""
    go(opened, address, "faults/late-shifts?result=read-the-fluid.good&result=nothing.bad")
    here = opened.locator("[id='faults/late-shifts']")
    expect(here.locator(".uh-done li")).to_have_count(1, timeout=BOOT)
    links = here.locator(".uh-next .uh-next__how a")
    ids = set(opened.locator("[id]").evaluate_all("all => all.map(({ id }) => id)"))
    there = links.evaluate_all("all => all.map((each) => each.getAttribute('href'))")
    assert there
    assert {each.removeprefix("#") for each in there if each} <= ids
    links.first.click()
    expect(here).to_be_hidden()
    opened.go_back()
    expect(here.locator(".uh-done li")).to_have_count(1)
    assert opened.outside == []


def test_a_file_that_was_cut_off_says_so(browser, address, tmp_path):
    whole = Path(url2pathname(urlsplit(address).path)).read_bytes()
    cut = tmp_path / "cut.html"
    cut.write_bytes(whole[: whole.index(b'id="part-python_stdlib.zip"') + 1_000_000])
    page = browser.new_page()
    page.goto(f"{cut.as_uri()}#calculators/torque-units?torque=90+lbf*in")
    expect(page.get_by_text("this file was not copied whole").first).to_be_visible(timeout=BOOT)
    page.close()
