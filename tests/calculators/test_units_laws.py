"""Laws that hold of every unit: round trips, order, and exact neighbours."""

import copy
import pickle
from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from underhoist_calculators.units import (
    KINDS,
    Span,
    convert,
    quantity,
    same_dimension,
    unit_words,
    units_of,
)

VALUES = st.floats(1e-3, 1e5)
# Kinds whose numbers cross zero differently by unit: their order is tested on their own.
PLAIN = sorted(KINDS - {"temperature", "level"})
PAIRS = [
    (one.name, other.name)
    for kind in sorted(KINDS)
    for one, other in product(units_of(kind), repeat=2)
]


@settings(max_examples=400)
@given(pair=st.sampled_from(PAIRS), value=VALUES)
def test_there_and_back(pair, value):
    one, other = pair
    start = quantity(value, one)
    assert convert(convert(start, other), one).magnitude == pytest.approx(value, rel=1e-12)


@given(kind=st.sampled_from(PLAIN), low=VALUES, step=st.floats(1e-3, 1e3))
def test_order_does_not_depend_on_the_unit(kind, low, step):
    names = [unit.name for unit in units_of(kind)]
    less, more = quantity(low, names[0]), quantity(low + step, names[0])
    for name in names:
        assert less.to(name).magnitude < more.to(name).magnitude


@given(st.floats(-50, 150), st.floats(-50, 150))
def test_temperature_differences_have_their_own_unit(one, other):
    difference = quantity(one, "degree_Celsius") - quantity(other, "degree_Celsius")
    assert same_dimension(difference, "delta_degree_Celsius")
    assert not same_dimension(difference, "degree_Celsius")
    assert difference.m_as("delta_degree_Fahrenheit") == pytest.approx(
        (one - other) * 1.8, abs=1e-9
    )


def test_marks_below_full_are_marks_above_turned_round():
    assert quantity(0.5, "mark_below_full").m_as("mark_above_full") == -0.5


def test_span_holds_its_ends():
    span = Span(quantity(16, "kilometre_per_hour"), quantity(22, "kilometre_per_hour"))
    assert span.holds(quantity(16, "kilometre_per_hour"))
    assert span.holds(quantity(13, "mile_per_hour"))
    assert not span.holds(quantity(14, "mile_per_hour"))


def test_quantities_can_be_copied_and_pickled():
    torque = quantity(9, "pound_force_foot")
    assert copy.deepcopy(torque) == torque
    assert pickle.loads(pickle.dumps(torque)) == torque  # noqa: S301 - our own bytes


def test_every_unit_has_words():
    assert all(unit_words(unit.name) for kind in KINDS for unit in units_of(kind) if unit.symbol)
