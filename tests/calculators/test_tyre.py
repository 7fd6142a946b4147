"""Tyre sizes against published conventions (tests/published/tyres.json)."""

import json
from math import pi
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from underhoist_calculators.tyre import metric_diameter, read_tyre
from underhoist_calculators.units import UnitError

CASES = {
    case["id"]: case
    for case in json.loads((Path(__file__).parents[1] / "published/tyres.json").read_text())
}


@pytest.mark.parametrize("case", ["TY-01", "TY-05"])
def test_nominal_diameter_is_the_geometric_one(case):
    # UN Regulation 30 rounds rim and height first and is up to 1.4 mm away: not used here.
    given_size = CASES[case]["inputs"]
    found = metric_diameter(*(given_size[key]["value"] for key in ("width", "aspect", "rim_code")))
    expected = CASES[case]["expected"]["geometric"]["value"]
    assert found.m_as("millimetre") == pytest.approx(expected, rel=1e-9)


def test_millimetre_rim_is_not_read_as_inches():
    assert metric_diameter(190, 65, 390).m_as("millimetre") == CASES["TY-13"]["expected"]["value"]


def test_rolling_circumference_is_305_diameters():
    # TY-16 rolls the rounded 647 mm; the nominal 647.5 mm rolls the same factor.
    case = CASES["TY-16"]
    per_diameter = case["expected"]["value"] / case["inputs"]["overall_diameter"]["value"]
    tyre = read_tyre("205/65 R 15")
    assert tyre.circumference.m_as("millimetre") == pytest.approx(647.5 * per_diameter)
    assert tyre.how == "3.05 x 647.5 mm"


def test_revolutions_per_mile():
    # TY-20: 20 168 over the diameter in inches, for the geometric circle.
    circle = 20 * pi * 25.4 / 1e3
    assert 1609.344 / circle == pytest.approx(CASES["TY-20"]["expected"]["value"] / 20, rel=1e-9)


@pytest.mark.parametrize(
    "text",
    ["205/70 R 14", "205/70R14", "205/70-14", "P205/70 R14", "205/70 HR14", "205 / 70 R 14"],
)
def test_spellings_of_one_size(text):
    assert read_tyre(text).circumference.m_as("metre") == pytest.approx(3.05 * 0.6426)


@pytest.mark.parametrize(
    ("text", "metres"), [("31x10.5 R 15", 3.05 * 31 * 0.0254), ("1.95 m", 1.95), ("1950 mm", 1.95)]
)
def test_flotation_sizes_and_rolled_circumferences(text, metres):
    assert read_tyre(text).circumference.m_as("metre") == pytest.approx(metres)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("185 R 14", "Write 185/80 R 14 or 185/82 R 14, or roll one turn and write metres."),
        ("big", "Write the size as on the tyre wall, e.g. 205/70 R 14"),
        ("205/10 R 4", "Write the size as on the tyre wall"),
        ("205/70 R 44", "Write the size as on the tyre wall"),
        ("12 m", "12 m is not the rolling circumference of a road vehicle's tyre."),
        ("1,95 m", "Write 1.95 m."),
        ("1.95", "The unit is missing."),
        ("", "Write the size as on the tyre wall"),
    ],
)
def test_refused(text, said):
    with pytest.raises(UnitError) as refused:
        read_tyre(text)
    assert said in str(refused.value)


@pytest.mark.parametrize("text", ["15.8x7 R 10", "51.1x20 R 25", "1.2 m", "4 m"])
def test_at_the_ends_of_what_a_road_vehicle_rolls_on(text):
    # 0.4 to 1.3 m of diameter, 1.2 to 4 m rolled: limits of this reader, no source.
    assert read_tyre(text).circumference.m_as("metre") > 1


@pytest.mark.parametrize("text", ["15.7x7 R 10", "51.3x20 R 25", "1.19 m", "4.01 m"])
def test_beyond_the_ends_it_is_refused(text):
    with pytest.raises(UnitError) as refused:
        read_tyre(text)
    assert refused.value.code == "impossible-range"


@given(st.sampled_from(range(145, 325, 10)), st.sampled_from(range(40, 85, 5)))
def test_a_higher_wall_rolls_further(width, aspect):
    lower, higher = (read_tyre(f"{width}/{a} R 15") for a in (aspect, aspect + 5))
    assert lower.circumference < higher.circumference
