"""Bad entries on every field of every calculator, made from the declarations."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from underhoist_calculators import all_calculators, door
from underhoist_calculators.units import unit_symbol, units_of

FIELDS = [
    pytest.param(calculator, field, id=f"{calculator.name} {field.name}")
    for calculator in all_calculators()
    for field in calculator.fields
]
QUANTITIES = [
    param
    for param in FIELDS
    if not param.values[1].choices and param.values[1].kind not in {"text", "tyre"}
]
NAMES = [param for param in FIELDS if param.values[1].kind == "text"]


def unit_of(field):
    if field.kind == "ratio" and not field.units:
        return ""
    return unit_symbol(field.units[0]) if field.units else next(units_of(field.kind)).symbol


def run(calculator, field, text):
    return door.run(calculator.name, {**door.example(calculator.name), field.name: text})


def refusal(calculator, field, text):
    """The error beside the field: it must be there, keep what was typed, and help."""
    result = run(calculator, field, text)
    assert not result["ok"]
    assert result["answer"] is None
    error = result["errors"][field.name]
    assert error["written"] in {text, text.strip()}
    assert error["wrong"].endswith(".")
    assert error["mend"].endswith(".")
    return error


def pair(field, text):
    """One number for a field, or the same number twice for a range."""
    return f"{text} to {text}" if field.span else text


@pytest.mark.parametrize(("calculator", "field"), FIELDS)
def test_empty(calculator, field):
    result = run(calculator, field, "")
    error = result["errors"].get(field.name)
    if field.required:
        assert error["wrong"] == "Nothing is written."
    else:
        # An optional field may be wanted because of the others; then it says why.
        assert error is None or error["wrong"] != "Nothing is written."


@pytest.mark.parametrize(("calculator", "field"), QUANTITIES)
@pytest.mark.parametrize("number", ["-1000000", "1000000"])
def test_far_out_of_range(calculator, field, number):
    error = refusal(calculator, field, f"{pair(field, number)} {unit_of(field)}".strip())
    assert "what this entry can be" in error["wrong"]
    assert error["mend"].startswith("Write a value from ")


@pytest.mark.parametrize(("calculator", "field"), QUANTITIES)
@pytest.mark.parametrize("number", ["1e999", "1e300"])
def test_huge(calculator, field, number):
    error = refusal(calculator, field, f"{pair(field, number)} {unit_of(field)}".strip())
    assert error["wrong"] == "The number is too large to be meant."


@pytest.mark.parametrize(("calculator", "field"), QUANTITIES)
@pytest.mark.parametrize("word", ["nan", "inf", "-inf", "five"])
def test_no_number(calculator, field, word):
    error = refusal(calculator, field, f"{word} {unit_of(field)}".strip())
    expected = "This is not a range" if field.span else "No number can be read"
    assert error["wrong"].startswith(expected)


@pytest.mark.parametrize(("calculator", "field"), QUANTITIES)
def test_wrong_dimension(calculator, field):
    other = "kg" if field.kind != "mass" else "L"
    error = refusal(calculator, field, f"{pair(field, '5')} {other}")
    assert error["wrong"].startswith(f"{other} is a unit of")


@pytest.mark.parametrize(("calculator", "field"), QUANTITIES)
def test_comma(calculator, field):
    error = refusal(calculator, field, f"{pair(field, '4,2')} {unit_of(field)}".strip())
    assert error["wrong"] == "A comma in a number can mean two things."
    assert "4.2" in error["mend"]


@pytest.mark.parametrize(
    ("calculator", "field"), [p for p in QUANTITIES if p.values[1].kind not in {"ratio", "count"}]
)
def test_no_unit(calculator, field):
    error = refusal(calculator, field, pair(field, "5"))
    assert error["wrong"] == "The unit is missing."
    assert next(units_of(field.kind)).symbol in error["mend"]


@pytest.mark.parametrize(("calculator", "field"), QUANTITIES)
def test_an_unknown_unit_chosen(calculator, field):
    entries = {**door.example(calculator.name), field.name: "5", f"{field.name}.unit": "florp"}
    error = door.run(calculator.name, entries)["errors"][field.name]
    assert error["wrong"] == '"florp" is not a unit known here.'


@pytest.mark.parametrize(
    ("calculator", "field"), [p for p in FIELDS if p not in (*QUANTITIES, *NAMES)]
)
def test_words_and_sizes(calculator, field):
    error = refusal(calculator, field, "something else")
    assert error["mend"].startswith("Write ")


@pytest.mark.parametrize(("calculator", "field"), NAMES)
@pytest.mark.parametrize(
    ("text", "wrong"),
    [
        ("-", '"-" is not a name.'),
        ("?! °", '"?! °" is not a name.'),
        ("D2 " * 70, "This is too long for a name."),
    ],
)
def test_no_name(calculator, field, text, wrong):
    error = refusal(calculator, field, text)
    assert error["wrong"] == wrong
    assert field.example in error["mend"]


@settings(max_examples=300)
@given(
    param=st.sampled_from(FIELDS),
    text=st.text(max_size=60)
    | st.from_regex(r"[-+]?[0-9.,/ ]{1,8}[a-zA-Z°·*]{0,6}", fullmatch=True),
)
def test_no_text_makes_a_traceback(param, text):
    calculator, field = param.values
    result = run(calculator, field, text)
    assert result["ok"] or result["errors"]
    assert "Traceback" not in result["answer_text"]


@pytest.mark.parametrize("calculator", all_calculators(), ids=lambda c: c.name)
def test_every_bad_entry_is_named_at_once(calculator):
    entries = {field.name: "?" for field in calculator.fields}
    assert set(door.run(calculator.name, entries)["errors"]) == set(entries)
