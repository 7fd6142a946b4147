"""The Heron's pages and the calculators say the same of its throttle cable."""

import pytest
from underhoist_calculators import all_calculators, door

from underhoist.pages.presets import for_family


@pytest.fixture(scope="module")
def heron(manual):
    return for_family(manual.families["heron-4"])


def filled(values, name):
    [calculator] = [each for each in all_calculators() if each.name == name]
    return {f.name: values.get(f.fills_from, "") for f in calculator.fields if f.fills_from}


def test_a_cable_family_gives_its_cable_and_its_governor(heron):
    assert heron["signal"] == "cable"
    assert heron["throttle_cable.travel"] == "36 to 38 mm"
    assert heron["throttle_cable.turn"] == "1 mm"
    assert heron["governor.law"] == "points"


def test_the_map_passes_through_the_half_windows_and_speaks_of_no_vacuum(heron):
    result = door.run("shift-map", filled(heron, "shift-map"))
    assert result["ok"], result["errors"]
    assert not [each for each in result["answer"]["warnings"] if each.startswith("The model")]
    assert "vacuum" not in str(result["answer"]).lower()


@pytest.mark.parametrize(
    ("speeds", "pattern"),
    [
        # Light late, full right; then half and full early; then light late alone, half right.
        ({"1-2-light": 24, "2-3-light": 44, "3-4-light": 71, "1-2-half": 46, "2-3-half": 78,
          "1-2-full": 55}, "cable-tight"),
        ({"1-2-light": 17, "2-3-light": 33, "3-4-light": 61, "1-2-half": 31, "2-3-half": 53,
          "1-2-full": 49}, "cable-slack"),
        ({"1-2-light": 29, "2-3-light": 51, "3-4-light": 78, "1-2-half": 41, "2-3-half": 69,
          "1-2-full": 55}, "cable-hangs"),
    ],
)  # fmt: skip
def test_the_pattern_on_the_road_test_page_is_the_calculators(heron, speeds, pattern):
    measured = {f"measured-{key}": f"{speed} km/h" for key, speed in speeds.items()}
    result = door.run("shift-check", {**filled(heron, "shift-check"), **measured})
    assert result["answer"]["values"]["pattern"] == pattern


def test_signal_vacuum_opened_from_the_heron_says_that_there_is_no_line(heron):
    result = door.run("signal-vacuum", {**filled(heron, "signal-vacuum"), "altitude": "0 m"})
    assert result["answer"]["summary"].startswith("This unit has no signal line")
