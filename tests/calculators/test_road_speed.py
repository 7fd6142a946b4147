"""Engine, converter and road speed against published figures, and their laws."""

from math import pi

import pytest
from hypothesis import given
from hypothesis import strategies as st
from underhoist_calculators import door
from underhoist_calculators.driveline import Driveline, engine_of, slip_of, turbine_of
from underhoist_calculators.rolling import FACTORS, roll
from underhoist_calculators.tyre import Tyre, read_tyre
from underhoist_calculators.units import quantity


def rpm(value):
    return quantity(value, "revolution_per_minute")


def percent(value):
    return quantity(value, "percent")


def sized(millimetres):
    return Tyre("", quantity(0, "metre"), "", quantity(millimetres, "millimetre"))


def test_published_dynamic_radius(published):
    # TY-17: 0.975 of the nominal radius.
    inputs, wanted, tolerance = published("road_speed", "TY-17")
    rolled = roll(sized(inputs["overall_diameter"]), "empirical").circumference
    assert rolled.m_as("millimetre") / (2 * pi) == pytest.approx(wanted, **tolerance)


def test_published_turns_per_mile(published):
    inputs, wanted, tolerance = published("road_speed", "TY-18")
    turns = roll(sized(inputs["overall_diameter"]), "circle").turns
    assert turns.m_as("turn_per_mile") == pytest.approx(wanted, **tolerance)


def test_published_constant_of_turns_per_mile(published):
    _, wanted, tolerance = published("road_speed", "TY-20")
    turns = roll(sized(25.4 * 20), "circle").turns
    assert turns.m_as("turn_per_mile") * 20 == pytest.approx(wanted, **tolerance)


def test_published_road_speed(published):
    inputs, wanted, tolerance = published("road_speed", "TY-23")
    line = Driveline(inputs["gear_ratio"], inputs["axle_ratio"],
                     quantity(inputs["circumference"], "metre"))  # fmt: skip
    turbine = turbine_of(rpm(inputs["rpm"]), percent(inputs["converter_slip"]))
    assert line.road(turbine).m_as("kilometre_per_hour") == pytest.approx(wanted, **tolerance)


@pytest.mark.parametrize("case", ["TY-24", "TY-25"])
def test_published_engine_speed(published, case):
    inputs, wanted, tolerance = published("road_speed", case)
    line = Driveline(inputs["gear_ratio"], inputs["axle_ratio"],
                     quantity(inputs["circumference"], "inch"))  # fmt: skip
    engine = engine_of(line.turbine(quantity(inputs["speed"], "mile_per_hour")), percent(0))
    assert engine.m_as("revolution_per_minute") == pytest.approx(
        wanted, rel=0, abs=tolerance["abs"] or 1e-12
    )


@pytest.mark.parametrize("case", ["TC-09", "TC-10"])
def test_published_slip(published, case):
    inputs, wanted, _ = published("road_speed", case)
    slip = slip_of(rpm(inputs["impeller"]), rpm(inputs["turbine"]))
    assert slip.m_as("percent") == pytest.approx(wanted["slip"], abs=1e-9)


def test_published_slip_of_a_stopped_engine_is_refused(published):
    inputs, wanted, _ = published("road_speed", "TC-11")
    with pytest.raises(ValueError, match=wanted.removeprefix("error: ")):
        slip_of(rpm(inputs["impeller"]), rpm(inputs["turbine"]))


def test_published_slip_from_a_road_test(published):
    inputs, wanted, tolerance = published("road_speed", "TC-12")
    circle = roll(sized(25.4 * inputs["diameter"]), "circle").circumference
    line = Driveline(inputs["gear_ratio"], inputs["axle_ratio"], circle)
    turbine = line.turbine(quantity(inputs["speed"], "mile_per_hour"))
    slip = slip_of(rpm(inputs["engine"]), turbine)
    assert turbine.m_as("revolution_per_minute") == pytest.approx(wanted["turbine"], **tolerance)
    assert slip.m_as("percent") == pytest.approx(wanted["slip"], **tolerance)


def test_a_rolled_circumference_needs_no_convention():
    tyre = read_tyre("1.95 m")
    assert {roll(tyre, name).circumference.m_as("metre") for name in FACTORS} == {1.95}


GEARS = st.floats(0.5, 5)
SPEEDS = st.floats(1, 250)
SLIPS = st.floats(-20, 90)


@given(GEARS, GEARS, SPEEDS, SLIPS)
def test_there_and_back(gear, axle, speed, slip):
    line = Driveline(gear, axle, quantity(2, "metre"))
    engine = engine_of(line.turbine(quantity(speed, "kilometre_per_hour")), percent(slip))
    back = turbine_of(engine, percent(slip))
    assert line.road(back).m_as("kilometre_per_hour") == pytest.approx(speed)
    assert slip_of(engine, back).m_as("percent") == pytest.approx(slip, abs=1e-9)


@given(GEARS, SPEEDS, SLIPS, SLIPS)
def test_more_slip_is_a_slower_vehicle(gear, speed, one, other):
    line = Driveline(gear, 3.5, quantity(2, "metre"))
    low, high = sorted((one, other))
    fast, slow = (line.road(turbine_of(rpm(20 * speed), percent(s))) for s in (low, high))
    assert fast >= slow


BASE = {"gear": "1", "axle": "3.08", "tyre": "2.0 m"}


def test_the_same_vehicle_in_other_units_is_as_fast():
    metric = door.run("road-speed", {**BASE, "engine": "2500 rpm", "slip": "3 %"})["answer"]
    other = door.run(
        "road-speed", {**BASE, "tyre": "78.74015748 in", "engine": "2500 rev/min", "slip": "0.03"}
    )["answer"]
    assert other["values"]["road"]["value"] == pytest.approx(metric["values"]["road"]["value"])


def test_slip_says_how_well_it_can_be_known():
    entries = {**BASE, "tyre": "205/75 R 14", "engine": "2500 rpm", "road": "60 mph"}
    answer = door.run("road-speed", entries)["answer"]
    assert answer["summary"] == "The converter slips 2.0 %."
    assert answer["warnings"] == [
        "The tyre is known to about 3 %, which alone moves the slip by 2.9 points. Roll one turn "
        "and measure it for a surer figure."
    ]


def test_coasting_is_answered_and_explained():
    answer = door.run("road-speed", {**BASE, "engine": "2000 rpm", "road": "85 km/h"})["answer"]
    assert answer["values"]["slip"]["value"] < 0
    assert answer["warnings"][1].startswith("Below zero slip the wheels drive the engine")


@pytest.mark.parametrize(
    ("entries", "field", "wrong"),
    [
        (
            {"engine": "2500 rpm"}, "slip",
            "Two are needed to work out the third; road speed is empty as well.",
        ),
        (
            {"engine": "2500 rpm", "road": "60 mph", "slip": "3 %"}, "slip",
            "All three are written, so there is nothing to work out.",
        ),
        (
            {"engine": "0 rpm", "road": "60 mph"}, "engine",
            "With the engine stopped there is no slip: the impeller must turn.",
        ),
        (
            {"road": "60 mph", "slip": "100 %"}, "slip",
            "At full slip the vehicle stands, whatever the engine does.",
        ),
    ],
)  # fmt: skip
def test_refused(entries, field, wrong):
    assert door.run("road-speed", {**BASE, **entries})["errors"][field]["wrong"] == wrong


def test_a_crawling_engine_still_has_a_slip():
    assert slip_of(rpm(0.5), rpm(0.4)).m_as("percent") == pytest.approx(20)


def test_a_rolled_turn_is_known_six_times_better_than_a_size():
    sizes = roll(sized(650), "radial"), roll(read_tyre("1.95 m"), "radial")
    assert [rolling.uncertainty for rolling in sizes] == [0.03, 0.005]
