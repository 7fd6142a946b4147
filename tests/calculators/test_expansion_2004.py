"""Our short form of the expansion against the full 2004 algorithm, written out here on its own.

The algorithm (API MPMS 11.1-2004, section 11.1.6.1) is first held to the standard's own worked
examples; only then is it used as a reference for lubricants, of which no printed table is at hand.
"""

import json
from math import exp
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from underhoist_calculators.fluid_expansion import correction_factor
from underhoist_calculators.units import quantity

PUBLISHED = Path(__file__).parents[1] / "published/fluid_expansion_2004.json"
CASES = {case["id"]: case for case in json.loads(PUBLISHED.read_text())}

LUBRICANT = (0.0, 0.34878, 0.0)
"""K0, K1, K2 per °F, base 60 °F."""
WATER_60F = 999.016
SHIFT = 0.01374979547
"""60 °F on the scale of 1968 less 60, doubled."""
ITS_90_TO_IPTS_68 = (
    -0.148759, -0.267408, 1.080760, 1.269056, -4.089591, -1.871251, 7.438081, -3.536296,
)  # fmt: skip


def on_the_scale_of_1968(fahrenheit):
    celsius = (fahrenheit - 32) / 1.8
    scaled = celsius / 630
    step = 0.0
    for coefficient in reversed(ITS_90_TO_IPTS_68):
        step = (step + coefficient) * scaled
    return 1.8 * (celsius - step) + 32


def full_factor(fahrenheit, density, coefficients):
    """CTL from 60 °F for a density at 60 °F, kg/m³."""
    k0, k1, k2 = coefficients
    a = SHIFT / 2 * ((k0 / density + k1) / density + k2)
    b = (2 * k0 + k1 * density) / (k0 + (k1 + k2 * density) * density)
    shifted = density * (1 + (exp(a * (1 + 0.8 * a)) - 1) / (1 + a * (1 + 1.6 * a) * b))
    alpha = (k0 / shifted + k1) / shifted + k2
    warmer = on_the_scale_of_1968(fahrenheit) - 60.0068749
    return exp(-alpha * warmer * (1 + 0.8 * alpha * (warmer + SHIFT)))


@pytest.mark.parametrize("case", ["FV-14", "FV-15", "FV-16"])
def test_worked_examples_of_the_standard(case):
    entries = {name: entry["value"] for name, entry in CASES[case]["inputs"].items()}
    density = 141.5 / (entries["API_gravity_60F"] + 131.5) * WATER_60F
    found = full_factor(entries["temperature"], density, [entries[k] for k in ("K0", "K1", "K2")])
    assert found == pytest.approx(CASES[case]["expected"]["value"], rel=2e-11)


@pytest.mark.parametrize("case", ["FV-18", "FV-20", "FV-22"])
def test_lubricants_by_the_full_algorithm(case):
    entries = {name: entry["value"] for name, entry in CASES[case]["inputs"].items()}
    found = full_factor(entries["temperature"], entries["density_60F"], LUBRICANT)
    assert found == pytest.approx(CASES[case]["expected"]["value"], abs=1e-12)


def full_from_15(celsius, density_60):
    """The full algorithm based on 15 °C: the oil's volume there over that at `celsius`."""
    fahrenheit = celsius * 1.8 + 32
    return full_factor(fahrenheit, density_60, LUBRICANT) / full_factor(59, density_60, LUBRICANT)


@given(st.floats(0, 120), st.floats(830, 900))
def test_the_short_form_is_as_good_as_a_dipstick(celsius, density_60):
    density_15 = density_60 * full_factor(59, density_60, LUBRICANT)
    found = correction_factor(
        quantity(celsius, "degree_Celsius"), quantity(density_15, "kilogram_per_cubic_metre")
    )
    assert found == pytest.approx(full_from_15(celsius, density_60), abs=1e-4)


def test_what_the_short_form_costs_at_the_level_rule():
    # 8.8 L from 20 °C to 80 °C: both agree to a thousandth of a litre.
    def gained(factor):
        return 8.8 * (1 / factor(80) - 1 / factor(20))

    full = gained(lambda t: full_from_15(t, 860))
    density = quantity(860 * full_factor(59, 860, LUBRICANT), "kilogram_per_cubic_metre")
    short = gained(lambda t: correction_factor(quantity(t, "degree_Celsius"), density))
    assert short == pytest.approx(full, abs=1e-3)


def test_the_constants_of_the_two_bases_are_not_the_same():
    # 0.34878 per °F at 60 °F against 0.6278 per °C at 15 °C: 1.8 times, within rounding.
    assert pytest.approx(0.6278, abs=5e-5) == 0.34878 * 1.8
