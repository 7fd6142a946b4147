"""The calculators in the browser: the same answers as at the desk, and a patient form."""

from __future__ import annotations

import gzip
import json
import struct
from pathlib import Path

import pytest
from desk_answers import answered_at_the_desk
from playwright.sync_api import expect
from underhoist_calculators import all_calculators, door

pytestmark = pytest.mark.browser

CASES = Path(__file__).parents[1] / "published" / "door_cases.json"

# Asks the page's own worker, as the page does, but for every case in one go.
ASK_ALL = """async ([url, cases]) => {
    const {CalculatorClient} = await import(url);
    const client = new CalculatorClient();
    const results = [];
    for (const [name, entries] of cases) results.push(await client.ask(name, entries));
    return results;
}"""

BOOT = 60_000
"""Longest wait, in ms, for Python to come up on a busy machine."""


@pytest.fixture(scope="module")
def cases():
    return json.loads(CASES.read_text(encoding="utf-8"))


@pytest.fixture(scope="module")
def without_script(browser):
    context = browser.new_context(java_script_enabled=False)
    yield context.new_page()
    context.close()


@pytest.fixture(scope="module")
def answering(own_page):
    """A page for what a form does with an answer, without a start of Python for each form."""
    answered_at_the_desk(own_page)
    return own_page


def open_calculator(page, site_url, name, query=""):
    page.goto(f"{site_url}calculators/{name}/{query}")
    page.wait_for_selector("#calculator[data-answered]", timeout=BOOT)


def answers_as_at_the_desk(page, site_url, cases):
    """Ask for every case: what the browser says is what the desk says."""
    assert len(cases) >= 10, "too few cases to prove anything"
    questions = [(case["calculator"], case["entries"]) for case in cases]
    page.goto(site_url)
    client = f"{site_url}assets/phone/calculator-client.js"
    in_browser = page.evaluate(ASK_ALL, [client, questions])
    at_desk = [door.run(name, entries) for name, entries in questions]
    assert in_browser == json.loads(json.dumps(at_desk))
    assert [result["ok"] for result in in_browser] == [case["ok"] for case in cases]


def test_every_published_case_gives_in_the_browser_what_it_gives_at_the_desk(
    new_page, site_url, cases
):
    """Python comes back from the build's memory image, which needs no wheels."""
    asked = []
    new_page.context.on("request", lambda request: asked.append(request.url))
    answers_as_at_the_desk(new_page, site_url, cases)
    assert [url for url in asked if "/runtime/image-" in url]
    assert [url for url in asked if "/runtime/wheel-" in url] == []


def test_every_calculator_is_asked(site, cases):
    named = {case["calculator"] for case in cases}
    shown = {folder.parent.name for folder in site.glob("calculators/*/index.html")}
    assert named == shown == {calculator.name for calculator in all_calculators()}


@pytest.mark.parametrize("name", [calculator.name for calculator in all_calculators()])
def test_the_answer_stands_on_the_page_without_script(without_script, site_url, name):
    without_script.goto(f"{site_url}calculators/{name}/")
    summary = door.run(name, door.example(name))["answer"]["summary"]
    expect(without_script.locator(".uh-answer__summary")).to_have_text(summary)


def test_the_address_fills_the_form_and_the_answer_follows(answering, site_url):
    open_calculator(answering, site_url, "torque-units", "?torque=120+lbf*in")
    expect(answering.locator("#torque")).to_have_value("120")
    expect(answering.locator("[name='torque.unit']")).to_have_value("lbf·in")
    summary = door.run("torque-units", {"torque": "120 lbf·in"})["answer"]["summary"]
    expect(answering.locator(".uh-answer__summary")).to_have_text(summary)


def test_a_text_that_is_no_quantity_is_put_in_as_written_and_refused_beside_the_field(
    answering, site_url
):
    open_calculator(answering, site_url, "torque-units", "?torque=12+lb")
    expect(answering.locator("#torque")).to_have_value("12 lb")
    expect(answering.locator("#torque-error")).to_have_text(
        "lb is a unit of a mass, not of a torque. Write 12 N·m, 12 lbf·ft or 12 lbf·in."
    )
    expect(answering.locator("#torque")).to_have_attribute("aria-invalid", "true")
    assert answering.locator("#calculator").get_attribute("data-answered") == "mend"


def test_typing_gives_the_answer_and_a_mistake_keeps_what_was_typed(answering, site_url):
    open_calculator(answering, site_url, "torque-units")
    answering.locator("[name='torque.unit']").select_option("N·m")
    answering.locator("#torque").fill("10")
    expect(answering.locator(".uh-answer__summary")).to_contain_text("10 N·m is")
    answering.locator("#torque").fill("10 x")
    expect(answering.locator("#torque-error")).not_to_be_empty()
    expect(answering.locator("#torque")).to_have_value("10 x")
    answering.locator("#torque").fill("10.5")
    expect(answering.locator("#torque-error")).to_be_empty()
    expect(answering.locator("#torque")).not_to_have_attribute("aria-invalid", "true")
    expect(answering.locator(".uh-answer__summary")).to_contain_text("10.5 N·m is")


def test_the_answer_stays_in_sight_while_typing_and_a_tap_goes_to_it(answering, site_url):
    open_calculator(answering, site_url, "staged-fill")
    strip = answering.locator(".uh-answer__now")
    expect(strip).to_be_hidden()
    first = answering.locator("form.uh-calc input").first
    first.press("End")
    first.press("0")
    summary = answering.locator(".uh-answer__summary")
    expect(strip).to_be_visible()
    expect(strip).to_have_text(summary.inner_text())
    strip.get_by_role("link").click()
    expect(strip).to_be_hidden()
    expect(summary).to_be_in_viewport()


def test_an_address_that_names_one_field_takes_the_example_out_of_the_others(answering, site_url):
    open_calculator(answering, site_url, "staged-fill", "?service-fill=4.2+L")
    expect(answering.locator("#service-fill")).to_have_value("4.2")
    examples = answering.locator("#calculator [data-example]:not(#service-fill)")
    assert examples.count() > 0
    assert set(examples.evaluate_all("fields => fields.map(field => field.value)")) == {""}
    wanted = answering.locator(".uh-answer__mend li")
    assert wanted.count() > 0
    expect(answering.locator("#calculator [aria-invalid]")).to_have_count(0)


def test_a_folded_group_tells_what_its_fields_hold(answering, site_url):
    open_calculator(answering, site_url, "staged-fill", "?service-fill=3.9+L")
    told = answering.locator("[data-value-of='service-fill']")
    expect(told).to_have_text("3.9 L")
    group = answering.locator("details", has=told)
    assert group.get_attribute("open") is None
    group.locator("summary").click()
    answering.locator("#service-fill").fill("3.8")
    expect(told).to_have_text("3.8 L")
    answering.locator("#service-fill").fill("")
    expect(told).to_have_text("")
    expect(told).to_be_hidden()


def test_an_exact_value_is_one_tap_away_and_stays_open_while_typing(answering, site_url):
    open_calculator(answering, site_url, "torque-units", "?torque=120+lbf*in")
    exact = answering.locator(".uh-plate__exact")
    expect(exact.locator("li").first).to_be_hidden()
    exact.locator("summary").press("Enter")
    expect(exact.locator("li").nth(1)).to_have_text("13.5581794833 newton metres")
    answering.locator("#torque").fill("121")
    # 121 x 0.112984829027617 N·m, the pound-force inch by its definition.
    expect(exact.locator("li").nth(1)).to_have_text("13.6711643123 newton metres")
    expect(exact.locator("li").nth(1)).to_be_visible()


def test_what_was_typed_survives_a_reload(answering, site_url):
    open_calculator(answering, site_url, "torque-units")
    answering.locator("[name='torque.unit']").select_option("kgf·m")
    answering.locator("#torque").fill("3.5")
    answering.locator("#torque").press("Tab")
    answering.reload()
    expect(answering.locator("#torque")).to_have_value("3.5")
    expect(answering.locator("[name='torque.unit']")).to_have_value("kgf·m")
    expect(answering.locator(".uh-answer__summary")).to_contain_text("3.5 kgf·m is", timeout=BOOT)


def test_until_the_first_answer_the_page_says_which_values_it_shows(page, site_url):
    page.route("**/*.wasm", lambda _: None)  # Python never comes up.
    page.goto(f"{site_url}calculators/torque-units/?torque=9+lbf*ft")
    expect(page.locator(".uh-calc__state")).to_have_text(
        "The answer below is for the example. Yours is being worked out."
    )
    example = door.run("torque-units", door.example("torque-units"))["answer"]["summary"]
    expect(page.locator(".uh-answer__summary")).to_have_text(example)


def test_a_calculator_that_fails_says_so_keeps_the_entries_and_can_be_tried_again(page, site_url):
    page.route("**/runtime/*/*", lambda route: route.abort())
    page.goto(f"{site_url}calculators/torque-units/?torque=9+lbf*ft")
    state = page.locator(".uh-calc__state")
    expect(state).to_contain_text(
        "The calculator stopped: it is not stored on this phone and there is no connection. "
        "The answer below is for the example. Your entries are kept.",
        timeout=BOOT,
    )
    expect(page.locator("#torque")).to_have_value("9")
    page.unroute("**/runtime/*/*")
    state.get_by_role("button", name="Try again").click()
    expect(page.locator(".uh-answer__summary")).to_contain_text("9 lbf·ft is", timeout=BOOT)
    expect(state).to_be_empty()


def image_of_another_build(image):
    """The image with one bit of the build's id changed: 32 bytes, 16 after its beginning."""
    content = bytearray(gzip.decompress(image))
    [runs] = struct.unpack_from("<I", content, 4)
    content[8 + 8 * runs + 16] ^= 1
    return gzip.compress(content, 1)


def image_cut_short(image):
    return gzip.compress(gzip.decompress(image)[:-4096], 1)


# Tells of each image what random number is drawn from it, or why it was refused.
RESTORE_ALL = """async ([url, count]) => {
    const {restore} = await import(url);
    const draw = (answer) => answer.__globals__.get("random").random();
    const told = [];
    for (let left = count; left > 0; left -= 1)
        told.push(await restore().then(draw, (error) => `refused: ${error}`));
    return told;
}"""


def test_an_image_that_does_not_fit_is_refused_and_two_that_do_draw_different_random_numbers(
    page, site, site_url
):
    """Of another build, no image at all, or none that arrives; a whole one is taken.

    An image holds the state of the random numbers; without a new seed they would repeat.
    """
    [image] = site.glob("runtime/image-*/*")
    whole = image.read_bytes()
    bodies = [image_of_another_build(whole), b"no image", None, whole, whole]
    left = iter(bodies)

    def answer(route):
        body = next(left)
        route.abort() if body is None else route.fulfill(body=body)

    page.route("**/runtime/image-*/*", answer)
    page.goto(site_url)
    module = f"{site_url}assets/phone/calculator-python.js"
    told = page.evaluate(RESTORE_ALL, [module, len(bodies)])
    assert all(str(each).startswith("refused: ") for each in told[:3]), told
    first, second = told[3:]
    assert 0 <= first < 1
    assert 0 <= second < 1
    assert first != second


def test_in_place_of_an_image_that_does_not_fit_python_starts_from_nothing(
    page, site, site_url, cases
):
    """The one that is cut short fails last of all. Each calculator is asked once: it is there."""
    [image] = site.glob("runtime/image-*/*")
    body = image_cut_short(image.read_bytes())
    page.route("**/runtime/image-*/*", lambda route: route.fulfill(body=body))
    of_each = list({case["calculator"]: case for case in cases}.values())
    with page.expect_request("**/runtime/wheel-*/*", timeout=BOOT):
        answers_as_at_the_desk(page, site_url, of_each)
