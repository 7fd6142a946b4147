"""Bad entries on every field, through the browser's own door: the same words as at the desk."""

from __future__ import annotations

import json

import pytest
from playwright.sync_api import expect
from underhoist_calculators import all_calculators, door, get
from underhoist_calculators.units import unit_symbol, units_of

pytestmark = pytest.mark.browser

BOOT = 60_000
"""Longest wait, in ms, for Python to come up on a busy machine."""

# Asks the page's own worker everything in one go.
ASK_ALL = """async ([url, name, all]) => {
    const {CalculatorClient} = await import(url);
    const client = (window.client ??= new CalculatorClient());
    const results = [];
    for (const entries of all) {
        const {ok, errors, answer_text} = await client.ask(name, entries);
        results.push({ok, errors, answer_text});
    }
    return results;
}"""

FILLED_IN = """form => Object.fromEntries(new FormData(form))"""


def unit_of(field):
    if field.units:
        return unit_symbol(field.units[0])
    if field.choices or field.kind in {"ratio", "count", "text", "tyre"}:
        return ""
    return next(units_of(field.kind)).symbol


def bad_texts(field):
    """Nonsense, empty, negative, huge, no number, wrong dimension, comma decimal, markup."""
    unit = unit_of(field)
    numbers = ["-1000000", "1e300", "nan", "-inf", "4,2"]
    twice = [f"{number} to {number}" for number in numbers] if field.span else []
    other = "kg" if field.kind != "mass" else "L"
    quantities = [f"{number} {unit}".strip() for number in numbers + twice]
    return ["", " ", "?", "something else", "<b>5</b>", f"5 {other}", *quantities]


def bad_entries(calculator):
    """The worked example with one field spoilt, for every field and every bad text."""
    example = door.example(calculator.name)
    return [
        {**example, field.name: text} for field in calculator.fields for text in bad_texts(field)
    ]


@pytest.mark.parametrize("calculator", all_calculators(), ids=lambda each: each.name)
def test_every_bad_entry_is_refused_in_the_same_words_as_at_the_desk(
    same_page, site_url, calculator
):
    entries = bad_entries(calculator)
    if same_page.url != f"{site_url}offline/":  # one start of Python for all calculators
        same_page.goto(f"{site_url}offline/")
    client = f"{site_url}assets/phone/calculator-client.js"
    in_browser = same_page.evaluate(ASK_ALL, [client, calculator.name, entries])
    results = [door.run(calculator.name, each) for each in entries]
    at_desk = [{key: each[key] for key in ("ok", "errors", "answer_text")} for each in results]
    assert in_browser == json.loads(json.dumps(at_desk))
    refused = sum(not each["ok"] for each in in_browser)
    # A name may be nearly anything.
    judged = [field for field in calculator.fields if field.kind != "text"]
    assert refused >= 8 * len(judged), "the texts are hardly bad ones"


@pytest.mark.parametrize("text", ["?", "4,2", "-5 L", "1e300", "nan", "5 kg", "<b>5</b>"])
def test_the_sentence_stands_beside_the_field_and_what_was_typed_stays(same_page, site_url, text):
    page = same_page
    if page.url != f"{site_url}calculators/staged-fill/":  # every field is put back at its end
        page.goto(f"{site_url}calculators/staged-fill/")
        page.wait_for_selector("#calculator[data-answered]", timeout=BOOT)
        page.evaluate("for (const each of document.querySelectorAll('details')) each.open = true")
    inputs = page.locator("form.uh-calc input:not([type=radio], [type=checkbox])")
    assert inputs.count() > 5
    names = {field.name for field in get("staged-fill").fields if field.kind == "text"}
    for field in inputs.all():
        name, before = field.get_attribute("name"), field.input_value()
        if name in names and text != "?":
            continue
        field.fill(text)
        entries = page.locator("form.uh-calc").evaluate(FILLED_IN)
        error = door.run("staged-fill", entries)["errors"][name]
        place = page.locator(f"#{name}-error")
        expect(place).to_have_text(f"{error['wrong']} {error['mend']}")
        assert place.evaluate(
            "(place, field) => place.parentElement.contains(field)", field.element_handle()
        )
        expect(field).to_have_value(text)
        expect(field).to_have_attribute("aria-invalid", "true")
        field.fill(before)
        expect(place).to_be_empty()
