"""Bad entries on every field, through the browser's own door: the same words as at the desk."""

from __future__ import annotations

import json
from collections import Counter
from itertools import cycle

import pytest
from desk_answers import answered_at_the_desk
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

# Types into many fields in one go, as a person does one by one.
TYPE = """(form, texts) => {
    for (const [name, text] of Object.entries(texts)) {
        form.elements[name].value = text;
        form.elements[name].dispatchEvent(new Event("input", { bubbles: true }));
    }
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
    """Every bad text in every field, in all fields at once, and each field spoilt alone once.

    Each text alone in each field would read a large form hundreds of times; `tests/calculators/`
    does that, without a browser.
    """
    example = door.example(calculator.name)
    alone = [{**example, field.name: "something else"} for field in calculator.fields]
    texts = {field.name: cycle(bad_texts(field)) for field in calculator.fields}
    turns = max(len(bad_texts(field)) for field in calculator.fields)
    at_once = [{name: next(each) for name, each in texts.items()} for _ in range(turns)]
    return alone + at_once


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
    refused = Counter(name for each in in_browser for name in each["errors"])
    # A name may be nearly anything.
    judged = [field for field in calculator.fields if field.kind != "text"]
    assert all(refused[field.name] >= 8 for field in judged), "the texts are hardly bad ones"


@pytest.fixture(scope="module")
def form(own_page, site_url):
    """A calculator with everything unfolded; each test puts its fields back."""
    page = own_page
    answered_at_the_desk(page)
    page.goto(f"{site_url}calculators/staged-fill/")
    page.wait_for_selector("#calculator[data-answered]", timeout=BOOT)
    page.evaluate("for (const each of document.querySelectorAll('details')) each.open = true")
    return page.locator("form.uh-calc")


@pytest.mark.parametrize("text", ["?", "4,2", "-5 L", "1e300", "nan", "5 kg", "<b>5</b>"])
def test_the_sentence_stands_beside_every_field_and_what_was_typed_stays(form, text):
    """In all fields at once: each has a sentence of its own."""
    fields = {field.name for field in get("staged-fill").fields if spoilt(field, text)}
    inputs = form.locator("input:not([type=radio], [type=checkbox])").all()
    typed = {name: field for field in inputs if (name := field.get_attribute("name")) in fields}
    assert len(typed) > 5
    before = {name: field.input_value() for name, field in typed.items()}
    form.evaluate(TYPE, dict.fromkeys(typed, text))
    errors = door.run("staged-fill", form.evaluate(FILLED_IN))["errors"]
    assert set(typed) <= set(errors)
    for name, field in typed.items():
        error, place = errors[name], form.locator(f"#{name}-error")
        expect(place).to_have_text(f"{error['wrong']} {error['mend']}")
        assert place.evaluate(
            "(place, field) => place.parentElement.contains(field)", field.element_handle()
        )
        expect(field).to_have_value(text)
        expect(field).to_have_attribute("aria-invalid", "true")
    form.evaluate(TYPE, before)
    for name in typed:
        expect(form.locator(f"#{name}-error")).to_be_empty()


def spoilt(field, text):
    """Whether the text is a bad one there: a name may be nearly anything."""
    return field.kind != "text" or text == "?"
