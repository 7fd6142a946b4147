"""The dipstick at another temperature: worked by hand, by a root finder, and by its laws."""

from math import exp

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import brentq
from underhoist_calculators import door

COMMON = {"dry-fill": "8.6 L", "between-marks": "0.5 L", "level-temperature": "65 to 80 °C"}


def run(level="1 mark below full", temperature="20 °C", **entries):
    return door.run(
        "level-temperature", {"level": level, "temperature": temperature, **COMMON, **entries}
    )


def value(name, *args, **entries):
    result = run(*args, **entries)
    assert result["errors"] == {}
    return result["answer"]["values"][name]["value"]


def test_ten_litres_gain_about_half_a_litre():
    # Common knowledge of the trade: a cold reading one mark low may be full.
    entries = {"dry-fill": "10 L", "other": "80 °C"}
    assert value("change-low", **entries) == pytest.approx(0.46, abs=0.05)
    assert value("level-low", **entries) == pytest.approx(-0.06, abs=0.1)


@pytest.mark.parametrize(("rho", "celsius"), [(840, 100), (870, 80), (900, 40)])
def test_by_the_formula_written_out(rho, celsius):
    def vcf(t):
        step = 0.6278 / rho * (t - 15)
        return exp(-step * (1 + 0.8 * step))

    found = value("level-low", other=f"{celsius} °C", density=f"{rho} kg/m³")
    assert found == pytest.approx(-1 + 8.6 / 0.5 * (1 / vcf(celsius) - 1 / vcf(20)), rel=1e-9)


def test_the_temperature_at_which_it_stands_at_the_mark():
    # A root finder goes the other way: which temperature brings the level to full?
    at = brentq(lambda t: value("level-low", other=f"{t!r} °C"), 20, 120, xtol=1e-11)
    assert value("level-low", other=f"{at!r} °C") == pytest.approx(0, abs=1e-9)
    # By hand: 0.5 L on 8.6 L is 5.8 %; 0.73 per mille a degree from 20 °C makes it near 94 °C.
    assert at == pytest.approx(94, abs=2)


FEW = settings(max_examples=30)
"""Smooth laws of one or two numbers: what breaks them breaks them nearly everywhere."""


@FEW
@given(st.floats(-20, 140), st.floats(0.5, 20))
def test_warmer_is_never_lower(celsius, more):
    warm, warmer = f"{celsius:.9f} °C", f"{min(140, celsius + more):.9f} °C"
    levels = [value("level-low", "0 marks above full", "60 °C", other=t) for t in (warm, warmer)]
    assert levels[0] <= levels[1]


@FEW
@given(st.floats(0, 100), st.floats(0, 100))
def test_there_and_back(now, then):
    entries = {"between-marks": "1 L"}
    there = value("level-low", "0.5 marks below full", f"{now:.9f} °C", other=f"{then:.9f} °C",
                  **entries)  # fmt: skip
    back = value("level-low", f"{there:.12f} marks above full", f"{then:.9f} °C",
                 other=f"{now:.9f} °C", **entries)  # fmt: skip
    assert back == pytest.approx(-0.5, abs=1e-8)


@FEW
@given(st.floats(10, 90))
def test_fahrenheit_and_quarts_make_no_difference(celsius):
    there = value("level-low", temperature=f"{celsius:.9f} °C")
    entries = {
        "dry-fill": f"{8.6 / 0.946352946:.12f} US qt",
        "between-marks": f"{0.5 / 1.1365225:.12f} imp qt",
        "level-temperature": "149 to 176 °F",
        "density": "0.86 kg/L",
    }
    found = value("level-low", temperature=f"{celsius * 1.8 + 32:.9f} °F", **entries)
    assert found == pytest.approx(there, abs=1e-7)


def test_what_is_full_when_cold_is_warned_of():
    answer = run("0 marks above full")["answer"]
    assert answer["warnings"] == [
        "Do not add. At 80 °C it will stand over the mark, by about 0.4 L: warm it up, read "
        "again, and take out what is over."
    ]


def test_a_reading_under_the_low_mark_is_warned_of():
    assert run("1.5 marks below full")["answer"]["warnings"] == [
        "The reading is below the low mark, where the volume of a mark is a guess."
    ]


def test_a_good_reading_is_not_warned_of():
    assert run("0.5 marks below full", "60 °C")["answer"]["warnings"] == []


def test_another_temperature_is_answered_alone():
    answer = run(other="100 °F")["answer"]
    assert len(answer["plates"]) == 1
    assert answer["plates"][0]["note"] == "Fluid at 100 °F, which is 38 °C."


def test_at_the_mark():
    answer = run("0 marks above full", "70 °C", other="70 °C")["answer"]
    assert answer["summary"] == "Expect the level at the full mark at 70 °C."
    assert answer["plates"][0]["number"] == "0.0"


def test_the_table_is_in_the_unit_of_the_reading():
    rows = run(temperature="70 °F")["answer"]["tables"][0]["rows"]
    assert [row[0] for row in rows] == ["30 °F", "70 °F", "110 °F", "150 °F", "190 °F", "220 °F"]
    assert rows[1] == ["70 °F", "1.0 mark below full"]


def test_the_table_goes_from_cold_to_hot():
    rows = run()["answer"]["tables"][0]["rows"]
    assert [row[0] for row in rows] == ["0 °C", "20 °C", "40 °C", "60 °C", "80 °C", "100 °C"]


def test_the_stick_ends_three_marks_from_full():
    assert run("3 marks below full", "60 °C", other="60 °C")["ok"]
    # A degree less is a hundredth of a mark less.
    assert not run("3 marks below full", "60 °C", other="59 °C")["ok"]


def test_far_cold_in_the_table_is_off_the_stick():
    rows = run("2.8 marks below full", "60 °C")["answer"]["tables"][0]["rows"]
    assert rows[0] == ["0 °C", "off the stick"]
    assert rows[3] == ["60 °C", "2.8 marks below full"]


@pytest.mark.parametrize(
    ("entries", "field", "wrong"),
    [
        ({"level-temperature": ""}, "level-temperature",
         "Neither the level rule nor another temperature is known."),
        ({"dry-fill": "1 L", "between-marks": "1 L"}, "between-marks",
         "1 L between the marks is no less than the whole 1 L."),
        ({"level": "3 marks below full", "temperature": "80 °C", "other": "20 °C"}, "level",
         "At 20 °C the level would be 3.8 marks below full, where a stick tells nothing."),
    ],
)  # fmt: skip
def test_refused(entries, field, wrong):
    errors = run(**entries)["errors"]
    assert set(errors) == {field}
    assert errors[field]["wrong"] == wrong
