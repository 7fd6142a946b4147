"""What every calculator must declare."""

import re

import pytest
from underhoist_calculators import all_calculators, door, get
from underhoist_calculators.declare import Field
from underhoist_calculators.units import KINDS, read_quantity, read_span, same_dimension, units_of

CALCULATORS = all_calculators()
FIELDS = [(calculator, field) for calculator in CALCULATORS for field in calculator.fields]


def test_the_three_of_this_issue_are_found():
    assert {"torque-units", "staged-fill", "shift-check"} <= {c.name for c in CALCULATORS}


@pytest.mark.parametrize("calculator", CALCULATORS, ids=lambda c: c.name)
def test_a_calculator_says_what_it_rests_on(calculator):
    assert calculator.sources
    assert calculator.limits
    assert calculator.purpose.endswith(".")
    assert get(calculator.name) is calculator


@pytest.mark.parametrize("calculator", CALCULATORS, ids=lambda c: c.name)
def test_field_names_are_used_once(calculator):
    names = [field.name for field in calculator.fields]
    assert len(set(names)) == len(names)


@pytest.mark.parametrize(("calculator", "field"), FIELDS)
def test_a_field_helps_and_offers_units_of_its_kind(calculator, field):
    assert field.label
    assert field.help.endswith(".")
    for unit in field.units:
        assert of_kind(read_quantity(f"1 {unit}", field.kind), field.kind)


def of_kind(value, kind):
    return same_dimension(value, next(units_of(kind)).name)


@pytest.mark.parametrize(("calculator", "field"), FIELDS)
def test_limits_defaults_and_examples_can_be_read(calculator, field):
    for text in filter(None, (field.low, field.high)):
        assert of_kind(read_quantity(text, field.kind), field.kind)
    for text in filter(None, (field.default, field.example)):
        if field.choices:
            assert text in {choice.name for choice in field.choices}
        elif field.span:
            assert of_kind(read_span(text, field.kind).low, field.kind)
        elif field.kind in KINDS:
            assert of_kind(read_quantity(text, field.kind), field.kind)


def test_an_unknown_kind_or_unit_is_refused():
    with pytest.raises(ValueError, match="field x declares an unknown kind or unit"):
        Field(name="x", label="X", help="X.", kind="florp", group="G")
    with pytest.raises(ValueError, match="field x declares an unknown kind or unit"):
        Field(name="x", label="X", help="X.", kind="torque", group="G", units=("florp",))


@pytest.mark.parametrize("calculator", CALCULATORS, ids=lambda c: c.name)
def test_presets_name_values_of_a_family(calculator):
    sources = [field.fills_from for field in calculator.fields if field.fills_from]
    assert all(re.fullmatch(r"[a-z][a-z_]*(\.[a-z0-9_-]+)*", source) for source in sources)
    assert len(set(sources)) == len(sources)


def test_the_form_of_each_calculator_carries_its_example():
    for calculator in CALCULATORS:
        form = door.form(calculator.name)
        for name in door.example(calculator.name):
            assert f'name="{name}"' in form
