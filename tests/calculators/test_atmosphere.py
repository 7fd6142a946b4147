"""The standard atmosphere against published tables and an independent package."""

import pytest
from ambiance import Atmosphere
from hypothesis import given
from hypothesis import strategies as st
from underhoist_calculators.atmosphere import (
    AltitudeError,
    absolute,
    altitude_of,
    standard_pressure,
    vacuum_here,
)
from underhoist_calculators.units import quantity

INHG = "conventional_inch_of_mercury"
ISO_RADIUS = 6356766.0
"""Earth's radius by ISO 2533, which turns geopotential into the package's geometric height."""


def feet(value):
    return quantity(value, "foot")


def inhg(value):
    return quantity(value, INHG)


@pytest.mark.parametrize("case", ["AT-03", "AT-04", "AT-05", "AT-06", "AT-07", "AT-08", "AT-09"])
def test_published_pressure(published, case):
    inputs, wanted, tolerance = published("atmosphere", case)
    found = standard_pressure(feet(inputs["geopotential_altitude"]))
    assert found.m_as("kilopascal") == pytest.approx(wanted["pressure"], **tolerance)
    assert found.m_as(INHG) == pytest.approx(wanted["pressure_inHg"], **tolerance)


def test_a_printed_table_is_wrong_and_is_not_reproduced(published):
    # AT-12, negative check: the table prints 12.682 psi for 4 000 ft.
    inputs, wanted, _ = published("atmosphere", "AT-12")
    psi = standard_pressure(feet(inputs["geopotential_altitude"])).m_as(
        "pound_force_per_square_inch"
    )
    assert psi == pytest.approx(wanted["true"], abs=0.0005)
    assert abs(psi - wanted["printed"]) > 0.009


def test_rule_of_thumb_is_off(published):
    inputs, wanted, _ = published("atmosphere", "AT-16")
    rule = standard_pressure(feet(0)).m_as(INHG) - inputs["geopotential_altitude"] / 1000
    true = standard_pressure(feet(inputs["geopotential_altitude"])).m_as(INHG)
    assert rule - true == pytest.approx(wanted, abs=0.001)


def test_published_vacuum_at_altitude(published):
    inputs, wanted, tolerance = published("atmosphere", "AT-18")
    ambient = standard_pressure(feet(inputs["geopotential_altitude"]))
    found = vacuum_here(inhg(inputs["vacuum_at_sea_level"]), ambient, proportional=False)
    assert found.m_as(INHG) == pytest.approx(wanted, **tolerance)


def test_published_deepest_vacuum(published):
    inputs, wanted, tolerance = published("atmosphere", "AT-19")
    ambient = standard_pressure(feet(inputs["geopotential_altitude"]))
    assert absolute(ambient, ambient).m_as(INHG) == 0
    assert ambient.m_as(INHG) == pytest.approx(wanted, **tolerance)


def test_published_altitude_from_pressure(published):
    inputs, wanted, _ = published("atmosphere", "AT-20")
    found = altitude_of(quantity(inputs["pressure"], "kilopascal"))
    assert found.m_as("foot") == pytest.approx(wanted, abs=1)


def test_published_absolute_pressure(published):
    inputs, wanted, tolerance = published("atmosphere", "PR-18")
    found = absolute(inhg(inputs["vacuum"]), inhg(inputs["ambient"]))
    assert found.m_as(INHG) == pytest.approx(wanted, **tolerance)


def test_published_impossible_vacuum_is_refused(published):
    inputs, wanted, _ = published("atmosphere", "PR-19")
    with pytest.raises(ValueError, match=wanted.removeprefix("error: ")):
        absolute(inhg(inputs["vacuum"]), inhg(inputs["ambient"]))


@given(st.floats(-1900, 10900))
def test_agrees_with_an_independent_package(metres):
    geometric = ISO_RADIUS * metres / (ISO_RADIUS - metres)
    expected = float(Atmosphere(geometric).pressure[0])
    found = standard_pressure(quantity(metres, "metre")).m_as("pascal")
    assert found == pytest.approx(expected, rel=2e-6)


@given(st.floats(-1900, 10900))
def test_there_and_back(metres):
    found = altitude_of(standard_pressure(quantity(metres, "metre")))
    assert found.m_as("metre") == pytest.approx(metres, abs=1e-6)


@given(st.floats(-1900, 10900), st.floats(-1900, 10900))
def test_higher_is_thinner(one, other):
    low, high = sorted((one, other))
    below, above = (standard_pressure(quantity(each, "metre")) for each in (low, high))
    assert below >= above


@given(st.floats(5, 22), st.booleans())
def test_at_sea_level_nothing_changes(vacuum, proportional):
    here = standard_pressure(quantity(0, "metre"))
    found = vacuum_here(inhg(vacuum), here, proportional=proportional)
    assert found.m_as(INHG) == pytest.approx(vacuum)


@pytest.mark.parametrize("metres", [-2001, 11001])
def test_outside_the_troposphere_is_refused(metres):
    with pytest.raises(AltitudeError, match="holds from \u22122000 m to 11 000 m"):
        standard_pressure(quantity(metres, "metre"))


def test_a_pressure_of_no_altitude_is_refused():
    with pytest.raises(AltitudeError, match="No altitude of the formula has this pressure"):
        altitude_of(quantity(10, "kilopascal"))


@pytest.mark.parametrize(("feet_below", "per_thousand"), [(0, 1.07), (9000, 0.81)])
def test_an_inch_a_thousand_feet_is_only_a_rule(feet_below, per_thousand):
    lower, upper = (standard_pressure(feet(feet_below + more)) for more in (0, 1000))
    assert (lower - upper).m_as(INHG) == pytest.approx(per_thousand, abs=0.011)


def test_in_proportion_to_the_published_pressure():
    # AT-05: 84.3073 of 101.325 kPa at 5 000 ft.
    found = vacuum_here(inhg(20), standard_pressure(feet(5000)), proportional=True)
    assert found.m_as(INHG) == pytest.approx(20 * 84.3072645405984 / 101.325, rel=2e-6)
