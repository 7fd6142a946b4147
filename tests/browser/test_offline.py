"""The manual without a network, proven from the server's side: it is stopped, or it counts."""

from __future__ import annotations

import csv
import html
import io
import json
import re
from pathlib import Path

import fault_hands as fault
import pytest
from card_filled import filled_card, show
from card_hands import begun_card, open_cards, stored_events, tick_off
from draft_hands import change_page, new_page, summary, text_field, write
from offline_hands import STORED, WAIT, state
from playwright.sync_api import expect
from underhoist_calculators import all_calculators, door

pytestmark = pytest.mark.browser

KINDS = {
    "front page": "",
    "unit family": "families/kestrel-3/",
    "procedure": "kestrel-3/set-band/",
    "fault": "faults/late-shifts/",
    "tool": "tools/inch-pound-wrench/",
    "hazard": "hazards/raised-vehicle/",
    "torque": "torques/kestrel-3/band-seat/",
    "calculators": "calculators/",
    "job cards": "cards/",
    "offline": "offline/",
}


@pytest.fixture
def page(stored):
    """A fresh page on that phone."""
    page = stored.new_page()
    yield page
    page.close()


@pytest.fixture
def gone(shop):
    """Address of the manual whose server does not answer any more."""
    shop.stop()
    yield shop.url
    shop.start()


def addresses(url, site):
    """Every page of the site."""
    folders = (path.parent.relative_to(site).as_posix() for path in site.rglob("index.html"))
    found = sorted(url + ("" if each == "." else f"{each}/") for each in folders)
    assert len(found) > 50, "too few pages to prove anything"
    return found


def test_every_page_is_there_when_the_server_is_gone(page, gone, site):
    page.goto(gone)
    missing = page.evaluate(
        """async (urls) => {
            const isThere = (url) => fetch(url).then((answer) => answer.ok, () => false);
            const there = await Promise.all(urls.map(isThere));
            return urls.filter((_, index) => !there[index]);
        }""",
        addresses(gone, site),
    )
    assert missing == []


def test_every_kind_of_page_opens_and_reloads_without_a_server(page, gone, site):
    for kind, path in KINDS.items():
        page.goto(gone + path)
        page.reload()
        title = re.search("<title>(.*?)</title>", (site / path / "index.html").read_text())
        assert page.title() == html.unescape(title[1]), kind
        expect(state(page)).to_have_text(STORED, timeout=WAIT)


def test_a_question_mark_and_a_missing_slash_find_their_page_without_a_server(page, gone):
    for address in ("kestrel-3/set-band?from=card", "kestrel-3/set-band/?from=card"):
        page.goto(gone + address)
        assert page.url == f"{gone}kestrel-3/set-band/?from=card"
        expect(page.locator("h1")).to_contain_text("band")


def test_the_search_finds_by_any_word_without_a_server(page, gone):
    page.goto(f"{gone}search.html?q=bushing")
    expect(page.locator("#understood")).to_have_text("bushing: we say bush.", timeout=WAIT)
    expect(page.locator("#results li").first).to_be_visible()


def test_an_address_that_does_not_exist_says_so_without_a_server(page, gone, site):
    page.goto(f"{gone}kestrel-3/no-such-page/")
    expected = page.evaluate(
        "html => new DOMParser().parseFromString(html, 'text/html').title",
        (site / "404.html").read_text(encoding="utf-8"),
    )
    assert expected
    assert page.title() == expected


# Asks the page's own worker every calculator in one go: one start of Python for all of them.
ASK_ALL = """async (questions) => {
    const {CalculatorClient} = await import("/assets/phone/calculator-client.js");
    const client = new CalculatorClient();
    const results = [];
    for (const [name, entries] of questions) results.push(await client.ask(name, entries));
    return results;
}"""


def test_every_calculator_answers_without_a_server(page, gone):
    questions = [(each.name, door.example(each.name)) for each in all_calculators()]
    results = [door.run(*question) for question in questions]
    page.goto(gone)
    assert page.evaluate(ASK_ALL, questions) == json.loads(json.dumps(results))
    for (name, _), result in zip(questions[:2], results, strict=False):
        page.goto(f"{gone}calculators/{name}/")
        page.wait_for_selector("#calculator[data-answered='yes']", timeout=WAIT)
        expect(page.locator(".uh-answer__summary")).to_have_text(result["answer"]["summary"])


def test_the_image_is_stored_unpacked_and_python_comes_back_from_it(page, gone):
    asked = []
    page.context.on("request", lambda request: asked.append(request.url))
    page.goto(gone)
    stored, listed = page.evaluate(
        """async () => {
            const {image, files} = await (await fetch("runtime/manifest.json")).json();
            const store = await caches.open(`underhoist-runtime ${location.href}`);
            const content = await (await store.match(image)).arrayBuffer();
            const hash = new Uint8Array(await crypto.subtle.digest("SHA-256", content));
            return [
                Array.from(hash, (byte) => byte.toString(16).padStart(2, "0")).join(""),
                files.find(({url}) => url === image).stored_sha256,
            ];
        }"""
    )
    assert stored == listed
    asked.clear()
    page.goto(f"{gone}calculators/torque-units/?torque=9+lbf*ft")
    page.wait_for_selector("#calculator[data-answered='yes']", timeout=WAIT)
    assert [url for url in asked if "/runtime/core-" in url], "the worker's requests are not seen"
    assert [url for url in asked if "/runtime/wheel-" in url] == []


def test_once_stored_no_page_asks_for_more_than_the_service_worker(page, shop):
    """Nothing of the manual's own server, and nothing of another origin."""
    asked = []
    page.context.on("request", lambda request: asked.append(request.url))
    shop.requests.clear()
    for path in KINDS.values():
        page.goto(shop.url + path)
    page.goto(f"{shop.url}calculators/torque-units/?torque=9+lbf*ft")
    page.wait_for_selector("#calculator[data-answered]", timeout=WAIT)
    assert set(shop.requests) <= {"/sw.js"}
    ours = (shop.url, "blob:", "data:")
    assert len(asked) > 30
    assert [url for url in asked if not url.startswith(ours)] == []


# What a check of the written order is given, one after the other.
RESULTS = ("good", "not done", "good")


def test_a_complaint_s_order_is_the_desk_s_and_a_reload_keeps_the_results(page, gone, site):
    file = site / "fault" / "data" / "slips.json"
    data = json.loads(file.read_text(encoding="utf-8"))
    family = data["families"][0]["id"]
    page.goto(f"{gone}faults/slips/")
    fault.answered(page)
    results: list[tuple[str, str]] = []
    for result in RESULTS:
        told = fault.told_at_the_desk(data, family, results)
        expect(fault.next_check(page)).to_have_text(f"Next check {told['next']['name']}")
        expect(page.locator(".uh-standing__outlook")).to_have_text(told["outlook"])
        results.append((told["next"]["id"], result))
        fault.give(page, result, len(results))
    page.reload()
    fault.answered(page)
    expect(page.locator(".uh-done li")).to_have_count(len(RESULTS))
    told = fault.told_at_the_desk(data, family, results)
    expect(fault.next_check(page)).to_have_text(f"Next check {told['next']['name']}")


def test_a_card_is_worked_without_a_server(page, gone):
    card = begun_card(page, gone, "set-band")
    tick_off(page)
    page.reload()
    expect(page.locator(".uh-card__left")).to_have_text("Left: 11 of 12 steps.")
    open_cards(page, gone, f"#card/{card}/sheet")
    expect(page.locator(".uh-card__line")).to_have_count(12)


PHOTO = Path(__file__).resolve().parents[2] / "pictures" / "card.png"


def test_a_photo_outlives_a_reload_without_a_server(page, gone):
    card = begun_card(page, gone, "set-band")
    tick_off(page)
    page.locator(".uh-photo__take input").first.set_input_files(PHOTO)
    small = page.locator(".uh-photo__small")
    expect(small).to_have_count(1)
    page.reload()
    expect(small.locator("img")).to_be_visible()
    page.wait_for_function("() => document.querySelector('.uh-photo').naturalWidth > 0")
    assert page.evaluate("location.hash") == f"#card/{card}/2"


def saved_readings(page, name):
    """Save a card's readings: the rows of the file, which has this name."""
    with page.expect_download() as started:
        page.get_by_role("button", name="Save the readings as CSV", exact=True).click()
    expect(page.get_by_text("The readings are among the downloads.")).to_be_visible()
    assert re.fullmatch(name, started.value.suggested_filename)
    text = started.value.path().read_bytes().decode("utf-8")
    assert text[0] == "\ufeff"
    return list(csv.DictReader(io.StringIO(text[1:], newline=""), strict=True))


def test_every_sheet_of_a_card_opens_and_its_readings_are_saved_without_a_server(page, gone):
    card = filled_card(page, gone)
    for part in ("close", "owner", "parts", "sheet"):
        show(page, gone, card, part)
        expect(page.locator('#cards h2[tabindex="-1"]')).to_be_visible()
    rows = saved_readings(page, r"readings-marlow-drover-green-\d{4}-\d\d-\d\d\.csv")
    events = [each for each in stored_events(page, gone) if each["card"] == card]
    assert len(rows) == sum(each["kind"] == "reading" for each in events) > 10
    [turns] = [row for row in rows if row["reading"] == "Turns until the adjuster seats"]
    told = [turns[each] for each in ("value", "low", "high", "outside", "reason")]
    assert told == ["3", "1.25", "2", "yes", "'=Worn, the owner says"]


def test_a_page_is_written_without_a_server(page, gone):
    change_page(page, gone)
    text = text_field(page).input_value()
    write(page, text.replace("minutes:", "minutos:", 1))
    expect(summary(page)).to_contain_text("1 finding that stops the build.")
    image = page.locator(".uh-desk__paper img").first
    expect(image).to_have_js_property("complete", True)
    assert image.evaluate("image => image.naturalWidth") > 0
    new_page(page, gone, "Set the rear band")
    written = text_field(page).input_value().replace("???", "x", 1)
    write(page, written)
    page.reload()
    expect(text_field(page)).to_have_value(written)
