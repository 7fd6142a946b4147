"""Units against published values: tests/published/*_units.json, each with its source beside it."""

import json
from pathlib import Path

import pint
import pytest
import scipy.constants as codata
from underhoist_calculators.units import (
    UnitError,
    convert,
    kind_of,
    quantity,
    read_quantity,
    same_dimension,
)

PUBLISHED = Path(__file__).parents[1] / "published"

# Spellings of the published cases that differ from the shop's.
SPELLINGS = {
    "US_quart": "US_quart",
    "inHg_conv": "inHg",
    "inHg_32F": "inHg 32F",
    "inHg_60F": "inHg 60F",
    "inH2O_conv": "inH2O",
    "inH2O_60F": "inH2O 60F",
    "mmHg_conv": "mmHg",
    "degC_difference": "degC difference",
    "degF_difference": "degF difference",
}


def cases(name):
    return json.loads((PUBLISHED / f"{name}.json").read_text())


def by_id(name, wanted):
    return next(case for case in cases(name) if case["id"] == wanted)


def written(value):
    return read_quantity(f"{value['value']:.15g} {SPELLINGS.get(value['unit'], value['unit'])}")


def tolerance(case):
    allowed = case["tolerance"]
    return {"rel": allowed.get("rel", 1e-12), "abs": allowed.get("abs", 1e-12)}


def convertible():
    """Every case that is one quantity in, one out, in units of this registry."""
    special = {"TU-15", "TU-19", "TU-20", "TU-21", "PR-20", "PR-21", "TP-13", "TP-17"}
    names = ("torque_units", "volume_units", "pressure_units", "temperature_units")
    return [case for name in names for case in cases(name) if case["id"] not in special]


@pytest.mark.parametrize("case", convertible(), ids=lambda case: case["id"])
def test_published_conversion(case):
    (given,) = case["inputs"].values()
    expected = case["expected"]
    unit = SPELLINGS.get(expected["unit"], expected["unit"])
    found = convert(written(given), unit).magnitude
    assert found == pytest.approx(expected["value"], **tolerance(case))


def test_there_are_published_cases_for_every_kind():
    assert len(convertible()) == 33


def test_printed_table_of_pairs_agrees_after_rounding():
    case = by_id("torque_units", "TU-20")
    pairs = zip(case["inputs"]["torques"]["value"], case["expected"]["value"], strict=True)
    for feet, metres in pairs:
        found = quantity(feet, "pound_force_foot").m_as("newton_metre")
        assert found == pytest.approx(metres, abs=0.6)


def test_printed_408_for_300_is_not_reproduced():
    case = by_id("torque_units", "TU-19")
    found = quantity(300, "pound_force_foot").m_as("newton_metre")
    assert found == pytest.approx(case["expected"]["true"]["value"], abs=0.01)
    assert abs(found - case["expected"]["printed"]["value"]) > 1


def test_smallest_published_torque():
    case = by_id("torque_units", "TU-15")
    dyne_centimetre = quantity(1e-7, "newton_metre")  # exact by definition
    expected = case["expected"]["value"]
    assert dyne_centimetre.m_as("pound_force_inch") == pytest.approx(expected, rel=1e-9)


def test_mass_times_length_is_not_a_torque():
    # TU-21: the label lb-ft is understood as lbf·ft, the product of a mass and a length is not.
    product = quantity(10, "pound") * quantity(1, "foot")
    assert not same_dimension(product, "newton_metre")
    with pytest.raises(UnitError, match="is not a unit used here"):
        kind_of(product)


def test_wrong_inch_of_mercury_costs_285_pascals():
    case = by_id("pressure_units", "PR-20")["expected"]
    conventional = read_quantity("29.92 inHg").m_as("pascal")
    warm = read_quantity("29.92 inHg 60F").m_as("pascal")
    assert conventional == pytest.approx(case["conventional"]["value"], rel=1e-8)
    assert warm == pytest.approx(case["60F"]["value"], rel=1e-8)


def test_millimetre_of_mercury_is_not_the_torr():
    case = by_id("pressure_units", "PR-21")["expected"]
    found = quantity(1, "conventional_millimetre_of_mercury").m_as("pascal")
    assert found == pytest.approx(case["mmHg"]["value"], rel=1e-11)
    assert abs(found - case["torr"]["value"]) > 1e-5


def test_conventional_inch_of_mercury():
    # NIST SP 811 (2008), appendix B.8: 3.386 389 E+03 Pa
    found = quantity(1, "conventional_inch_of_mercury").m_as("pascal")
    assert found == pytest.approx(3386.389, abs=5e-4)


def test_range_of_temperatures():
    case = by_id("temperature_units", "TP-13")
    ends = [quantity(t, "degree_Fahrenheit").m_as("degree_Celsius") for t in (150, 200)]
    assert ends == pytest.approx(case["expected"]["value"], abs=1e-9)


def test_a_temperature_cannot_be_doubled():
    # TP-17: arithmetic on points of a scale is refused, not guessed.
    with pytest.raises(pint.errors.OffsetUnitCalculusError):
        quantity(5, "degree_Celsius") * 2


@pytest.mark.parametrize(
    ("unit", "reference", "base"),
    [
        ("inch", codata.inch, "metre"),
        ("foot", codata.foot, "metre"),
        ("mile", codata.mile, "metre"),
        ("thou", codata.mil, "metre"),
        ("pound", codata.pound, "kilogram"),
        ("ounce", codata.oz, "kilogram"),
        ("pound_force", codata.lbf, "newton"),
        ("kilogram_force", codata.kgf, "newton"),
        ("pound_force_inch", codata.lbf * codata.inch, "newton_metre"),
        ("pound_force_foot", codata.lbf * codata.foot, "newton_metre"),
        ("kilogram_force_metre", codata.kgf, "newton_metre"),
        ("US_gallon", codata.gallon, "cubic_metre"),
        ("imperial_gallon", codata.gallon_imp, "cubic_metre"),
        ("US_fluid_ounce", codata.fluid_ounce, "cubic_metre"),
        ("imperial_fluid_ounce", codata.fluid_ounce_imp, "cubic_metre"),
        ("pound_force_per_square_inch", codata.psi, "pascal"),
        ("bar", codata.bar, "pascal"),
        ("kilometre_per_hour", codata.kmh, "metre_per_second"),
        ("mile_per_hour", codata.mph, "metre_per_second"),
    ],
)
def test_agrees_with_scipy(unit, reference, base):
    assert quantity(1, unit).m_as(base) == pytest.approx(reference, rel=1e-14)


def test_quarts_differ_by_a_fifth_and_fluid_ounces_the_other_way():
    assert quantity(1, "imperial_quart") > quantity(1, "US_quart")
    assert quantity(1, "imperial_fluid_ounce") < quantity(1, "US_fluid_ounce")
