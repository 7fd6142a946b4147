"""Volume correction against published values (tests/published/fluid_expansion.json)."""

import json
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from underhoist_calculators.fluid_expansion import correction_factor, rise
from underhoist_calculators.units import quantity

PUBLISHED = Path(__file__).parents[1] / "published/fluid_expansion.json"
CASES = {case["id"]: case for case in json.loads(PUBLISHED.read_text())}
DENSITY = quantity(860, "kilogram_per_cubic_metre")


def at(celsius):
    return quantity(celsius, "degree_Celsius")


@pytest.mark.parametrize("case", ["FV-24", "FV-27"])
def test_published_factor(case):
    entries = CASES[case]["inputs"]
    density = quantity(entries["density_15C"]["value"], "kilogram_per_cubic_metre")
    found = correction_factor(at(entries["temperature"]["value"]), density)
    assert found == pytest.approx(CASES[case]["expected"]["value"], abs=5e-6)


def test_density_outside_the_lubricants_is_refused():
    density = quantity(CASES["FV-33"]["inputs"]["density_60F"]["value"], "kilogram_per_cubic_metre")
    with pytest.raises(ValueError, match=r"780 kg/m³ is outside 800\.9 kg/m³ to 1163\.5 kg/m³"):
        correction_factor(at(38), density)


@pytest.mark.parametrize("celsius", [-51, 151])
def test_temperature_outside_the_correction_is_refused(celsius):
    with pytest.raises(ValueError, match="where the correction holds"):
        correction_factor(at(celsius), DENSITY)


def test_nothing_to_correct_at_15_degrees():
    assert correction_factor(at(15), DENSITY) == 1


def test_ten_litres_gain_about_half_a_litre():
    # Common knowledge of the trade: 20 °C to 80 °C, about 5 %.
    gained = rise(quantity(10, "litre"), at(20), at(80), DENSITY)
    assert gained.m_as("litre") == pytest.approx(0.46, abs=0.05)


@given(st.floats(-20, 140), st.floats(0.5, 10))
def test_hotter_fluid_takes_more_room(celsius, step):
    assert correction_factor(at(celsius + step), DENSITY) < correction_factor(at(celsius), DENSITY)


@given(st.floats(-20, 140), st.floats(-20, 140))
def test_rise_and_fall_are_equal(one, other):
    litres = quantity(8, "litre")
    up, down = rise(litres, at(one), at(other), DENSITY), rise(litres, at(other), at(one), DENSITY)
    assert up.m_as("litre") == pytest.approx(-down.m_as("litre"), abs=1e-12)


@given(st.floats(-50, 150))
def test_fahrenheit_makes_no_difference(celsius):
    fahrenheit = quantity(celsius * 1.8 + 32, "degree_Fahrenheit")
    if not -50 <= fahrenheit.m_as("degree_Celsius") <= 150:
        return  # the last binary digit took it outside
    assert correction_factor(fahrenheit, DENSITY) == pytest.approx(
        correction_factor(at(celsius), DENSITY), rel=1e-12
    )
