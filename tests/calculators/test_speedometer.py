"""Speedometer gears against published figures, and the rule never to read low."""

from decimal import ROUND_HALF_UP, Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st
from underhoist_calculators.speedometer import (
    adapter_ratio,
    best,
    cable_speed,
    highest_reading,
    needed_from_reading,
    needed_teeth,
    reading_error,
)
from underhoist_calculators.units import quantity


def per_mile(value):
    return quantity(value, "turn_per_mile")


def mph(value):
    return quantity(value, "mile_per_hour")


def test_published_cable_speed(published):
    inputs, wanted, tolerance = published("speedometer", "SP-01")
    found = cable_speed(mph(inputs["speed"]), per_mile(inputs["cable_constant"]))
    assert found.m_as("revolution_per_minute") == pytest.approx(wanted, **tolerance)


def test_published_cable_constants(published):
    inputs, wanted, tolerance = published("speedometer", "SP-02")
    found = per_mile(inputs["cable_constant"]).m_as("turn_per_kilometre")
    assert found == pytest.approx(wanted, **tolerance)
    inputs, wanted, tolerance = published("speedometer", "SP-04")
    found = quantity(inputs["cable_constant"], "turn_per_kilometre").m_as("turn_per_mile")
    assert found == pytest.approx(wanted, **tolerance)


@pytest.mark.parametrize("case", ["SP-08", "SP-09"])
def test_published_choice(published, case):
    inputs, wanted, tolerance = published("speedometer", case)
    teeth = needed_teeth(
        inputs["drive_teeth"],
        inputs["axle_ratio"],
        per_mile(inputs["tyre_revolutions"]),
        per_mile(inputs["cable_constant"]),
    )
    fitted = best(teeth, inputs["choices"])
    assert fitted == wanted["nearest"]
    assert 100 * reading_error(teeth, fitted) == pytest.approx(wanted["reading_error"], **tolerance)
    # The next gear reads low, which UN Regulation 39 forbids.
    assert reading_error(teeth, fitted + 1) < 0


def test_published_teeth_from_a_measured_error(published):
    inputs, wanted, tolerance = published("speedometer", "SP-10")
    found = needed_from_reading(
        inputs["fitted_teeth"], mph(inputs["indicated"]), mph(inputs["true"])
    )
    assert found == pytest.approx(wanted, **tolerance)


def test_published_half_a_tooth_goes_down(published):
    # SP-11: neither half to even nor half up, but down: more teeth would read low.
    inputs, wanted, _ = published("speedometer", "SP-11")
    half_up = Decimal(inputs["unrounded"]).quantize(Decimal(1), ROUND_HALF_UP)
    assert int(half_up) == wanted["half_up"]
    assert best(inputs["unrounded"], range(10, 25)) == wanted["never_under_read"]


def test_published_adapter(published):
    inputs, wanted, tolerance = published("speedometer", "SP-13")
    found = adapter_ratio(
        per_mile(inputs["instrument_constant"]), per_mile(inputs["cable_supplied"])
    )
    assert found == pytest.approx(wanted, **tolerance)


def test_published_highest_reading(published):
    inputs, wanted, tolerance = published("speedometer", "TY-27")
    found = highest_reading(quantity(inputs["true_speed"], "kilometre_per_hour"))
    assert found.m_as("kilometre_per_hour") == pytest.approx(wanted, **tolerance)


TEETH = st.floats(5, 50)


@given(TEETH, st.integers(3, 40), st.integers(1, 15))
def test_the_best_gear_never_reads_low_and_no_other_reads_closer(teeth, fewest, more):
    available = range(fewest, fewest + more)
    fitted = best(teeth, available)
    honest = [each for each in available if reading_error(teeth, each) >= -1e-9]
    if fitted is None:
        assert honest == []
        return
    assert fitted in honest
    assert reading_error(teeth, fitted) == min(reading_error(teeth, each) for each in honest)


@given(TEETH)
def test_a_whole_number_reads_right_in_spite_of_rounding(teeth):
    whole = round(teeth)
    assert best(whole * (1 - 1e-12), range(1, 60)) == whole


@given(st.integers(5, 30), st.floats(40, 100), st.floats(0.8, 1.2))
def test_both_ways_agree(fitted, true, share):
    # A gear that reads high by a share is proven to read high by that share.
    needed = fitted * share
    indicated = true * (1 + reading_error(needed, fitted))
    assert needed_from_reading(fitted, mph(indicated), mph(true)) == pytest.approx(needed)


@given(st.integers(4, 12), st.floats(2, 5), st.floats(400, 900))
def test_turns_per_mile_and_per_kilometre_need_the_same_teeth(drive, axle, tyre):
    miles = needed_teeth(drive, axle, per_mile(tyre), per_mile(1000))
    metric = needed_teeth(
        drive,
        axle,
        per_mile(tyre).to("turn_per_kilometre"),
        per_mile(1000).to("turn_per_kilometre"),
    )
    assert metric == pytest.approx(miles)
