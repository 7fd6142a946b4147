"""torque-units: conversion is exact (test_units_published.py); here the warning and the working."""

import pytest
import scipy.constants as codata
from hypothesis import given
from hypothesis import strategies as st
from underhoist_calculators import door
from underhoist_calculators.calculators.torque_units import (
    NEIGHBOURS,
    SCALES,
    in_every_unit,
    misread,
    times,
)
from underhoist_calculators.units import quantity


def answer(torque):
    return door.run("torque-units", {"torque": torque})["answer"]


@pytest.mark.parametrize(
    ("torque", "warning"),
    [
        ("120 lbf·in",
         "Read the scale before pulling: 120 means pound-force inches here. Set on the lbf·ft "
         "scale, 120 gives 1440 lbf·in, 12 times what is wanted."),
        ("9 lbf·ft",
         "Read the scale before pulling: 9 means pound-force feet here. Set on the lbf·in scale, "
         "9 gives 0.75 lbf·ft, 8.3 % of what is wanted. Set on the N·m scale, 9 gives "
         "6.64 lbf·ft, 74 % of what is wanted."),
        ("12 N·m",
         "Read the scale before pulling: 12 means newton metres here. Set on the lbf·ft scale, "
         "12 gives 16.3 N·m, 1.36 times what is wanted."),
    ],
)  # fmt: skip
def test_a_small_torque_warns_of_the_wrong_scale(torque, warning):
    assert answer(torque)["warnings"] == [warning]


@pytest.mark.parametrize("torque", ["40 N·m", "30 lbf·ft", "300 lbf·ft"])
def test_a_large_torque_does_not(torque):
    assert answer(torque)["warnings"] == []
    assert answer(torque)["tables"] == []


def test_the_slips_are_the_known_ones():
    # x12 and /12 between feet and inches, x1.36 and x0.74 between N·m and lbf·ft
    small = quantity(9, "pound_force_foot")
    wrong = misread(small)
    assert times(wrong["pound_force_inch"], small) == pytest.approx(1 / 12)
    assert times(wrong["newton_metre"], small) == pytest.approx(1 / (codata.lbf * codata.foot))
    metres = quantity(9, "newton_metre")
    assert times(misread(metres)["pound_force_foot"], metres) == pytest.approx(1.3558, abs=1e-4)


def test_every_scale_has_its_neighbours():
    assert set(NEIGHBOURS) == set(SCALES)


def test_the_plate_reads_in_the_unit_as_written_with_the_others_beside():
    (plate,) = answer("120 lbf·in")["plates"]
    assert (plate["number"], plate["unit"]) == ("120", "pound-force inches")
    assert plate["others"] == ["13.6 N·m", "10 lbf·ft", "1.38 kgf·m", "138 kgf·cm"]
    assert plate["exact"] == {"value": 120.0, "unit": "pound_force_inch"}


def test_an_uncommon_unit_is_converted_without_a_warning():
    ounces = answer("100 ozf·in")
    assert ounces["warnings"] == []
    assert ounces["summary"].startswith("100 ozf·in is 0.706 N·m, ")


def test_working_shows_factor_numbers_and_result():
    first = answer("120 lbf·in")["working"][0]
    assert first == {
        "what": "lbf·in to N·m",
        "formula": "1 lbf·in = 0.112984829 N·m",
        "numbers": "120 × 0.112984829",
        "result": "13.55818 N·m",
    }


@given(st.floats(0.01, 5000), st.sampled_from(SCALES))
def test_the_answer_does_not_depend_on_the_unit(newton_metres, unit):
    torque = quantity(newton_metres, "newton_metre")
    one, other = in_every_unit(torque), in_every_unit(torque.to(unit))
    for scale in SCALES:
        assert one[scale].magnitude == pytest.approx(other[scale].magnitude, rel=1e-12)


@given(st.floats(0.01, 4000), st.floats(0.001, 1000))
def test_more_is_more_in_every_unit(newton_metres, more):
    less = in_every_unit(quantity(newton_metres, "newton_metre"))
    greater = in_every_unit(quantity(newton_metres + more, "newton_metre"))
    assert all(less[scale] < greater[scale] for scale in SCALES)
