"""US and imperial measure against published values (tests/published/volume_units.json)."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import constants
from underhoist_calculators import door
from underhoist_calculators.calculators.fluid_units import NAMESAKES, VOLUMES, namesake
from underhoist_calculators.units import quantity, unit_symbol


def run(volume):
    return door.run("fluid-units", {"volume": volume})


@pytest.mark.parametrize(
    ("case", "unit", "into"),
    [
        ("FV-01", "US qt", "litre"), ("FV-03", "US pt", "litre"), ("FV-04", "imp pt", "litre"),
        ("FV-07", "imp qt", "US_quart"), ("FV-09", "US qt", "imperial_quart"),
        ("FV-12", "imp fl oz", "millilitre"), ("FV-13", "L", "US_quart"),
    ],
)  # fmt: skip
def test_published_volume(case, unit, into, published):
    entries, expected, _ = published("volume_units", case)
    found = run(f"{entries['volume']} {unit}")["answer"]["values"][into]
    assert found == {"value": pytest.approx(expected, rel=1e-9), "unit": into}


@pytest.mark.parametrize(
    ("us", "imperial", "times"),
    [
        ("US_gallon", "imperial_gallon", constants.gallon_imp / constants.gallon),
        ("US_fluid_ounce", "imperial_fluid_ounce",
         constants.fluid_ounce_imp / constants.fluid_ounce),
    ],
)  # fmt: skip
def test_the_namesake_of_the_other_country_agrees_with_scipy(us, imperial, times):
    wrong = namesake(quantity(1, us))
    assert wrong == quantity(1, imperial)
    assert (wrong / quantity(1, us)).m_as("dimensionless") == pytest.approx(times, rel=1e-12)
    assert namesake(quantity(1, imperial)) == quantity(1, us)


def test_litres_have_no_namesake():
    assert namesake(quantity(4, "litre")) is None
    assert run("4 L")["answer"]["warnings"] == []
    assert run("4 L")["answer"]["summary"] == "4 L is 4.23 US qt, 3.52 imp qt."


@pytest.mark.parametrize(
    ("volume", "warning"),
    [
        ("4 qt US", "4 imp qt would be 4.55 L, 20 % more than 4 US qt."),
        ("4 qt imperial", "4 US qt would be 3.79 L, 17 % less than 4 imp qt."),
        ("10 US fl oz", "10 imp fl oz would be 0.28 L, 4 % less than 10 US fl oz."),
    ],
)
def test_the_other_country_is_warned_of(volume, warning):
    said = f"Look whose measure the jug carries: {warning}"
    assert run(volume)["answer"]["warnings"] == [said]


@pytest.mark.parametrize(
    ("volume", "wrong"),
    [
        ("4 quarts", '"quarts" can be US or imperial.'),
        ("1 gal", '"gal" can be US or imperial.'),
        ("16 fl oz", '"fl oz" can be US or imperial.'),
        ("4 dry quarts",
         '"dry quarts" is a dry measure, for grain, and not the same as one for fluid.'),
        ("4 US dry pints",
         '"US dry pints" is a dry measure, for grain, and not the same as one for fluid.'),
        ("4 kg", "kg is a unit of a mass, not of a volume."),
    ],
)  # fmt: skip
def test_refused(volume, wrong):
    assert run(volume)["errors"]["volume"]["wrong"] == wrong


@given(st.floats(0.1, 100), st.sampled_from(VOLUMES), st.sampled_from(VOLUMES))
def test_the_same_volume_in_other_units_gives_the_same_answer(litres, one, other):
    start = quantity(litres, "litre")
    texts = (f"{start.m_as(unit):.14g} {unit_symbol(unit)}" for unit in (one, other))
    first, second = (run(text)["answer"]["values"] for text in texts)
    for unit in VOLUMES:
        assert first[unit]["value"] == pytest.approx(second[unit]["value"], rel=1e-11)


@given(st.floats(0.1, 100), st.sampled_from(sorted(NAMESAKES)))
def test_the_namesake_of_the_namesake_is_itself(number, unit):
    volume = quantity(number, unit)
    assert namesake(namesake(volume)) == volume


def test_both_countries_stand_side_by_side():
    table = run("9.5 US qt")["answer"]["tables"][0]
    assert table["heads"] == ["Measure", "US", "Imperial"]
    # 9.5 qt: by the definitions of both gallons
    assert table["rows"] == [
        ["Quart", "9.5 US qt", "7.91 imp qt"],
        ["Gallon", "2.38 US gal", "1.98 imp gal"],
        ["Pint", "19 US pt", "15.8 imp pt"],
        ["Fluid ounce", "304 US fl oz", "316 imp fl oz"],
    ]


def test_working_is_in_exact_litres():
    lines = run("9.5 US qt")["answer"]["working"]
    assert [line["formula"] for line in lines] == [
        "1 US qt = 0.946352946 L",
        "1 imp qt = 1.1365225 L",
    ]
    assert lines[1]["result"] == "7.910405 imp qt"
