"""What a calculator declares that its answer can be, and what the answer then is."""

import json
from pathlib import Path

import pytest
from underhoist_calculators import all_calculators, get
from underhoist_calculators.door import run

CASES = json.loads((Path(__file__).parents[1] / "published" / "door_cases.json").read_text())
JUDGING = [each.name for each in all_calculators() if each.patterns]
WINDOWS = {
    "window-1-2-light": "16 to 22 km/h",
    "window-2-3-light": "30 to 38 km/h",
    "window-1-2-half": "42 to 50 km/h",
    "window-2-3-half": "71 to 81 km/h",
    "window-1-2-full": "60 to 68 km/h",
    "window-2-3-full": "100 to 110 km/h",
}


def values(name, entries):
    found = run(name, entries)
    assert found["ok"], found
    return found["answer"]["values"]


def rivals(found):
    return [each for each in str(found.get("rivals", "")).split(", ") if each]


def test_two_calculators_name_patterns():
    assert JUDGING == ["shift-check", "signal-vacuum"]


@pytest.mark.parametrize("name", JUDGING)
def test_no_pattern_is_declared_twice(name):
    patterns = get(name).patterns
    assert len(set(patterns)) == len(patterns)


@pytest.mark.parametrize(
    ("source", "modulator", "pattern"),
    [
        ("18 inHg", "18 inHg", "sound"),
        ("18 inHg", "13 inHg", "line-losing"),
        ("14 inHg", "8 inHg", "low-and-losing"),
        ("14 inHg", "14 inHg", "source-low"),
        ("14 inHg", "", "source-low"),
        ("18 inHg", "", "source-good"),
        ("21 inHg", "21 inHg", "source-high"),
        ("21 inHg", "15 inHg", "line-losing"),
        ("17 inHg", "20 inHg", "impossible"),
        ("", "17 inHg", "not-read"),
        ("", "", "not-read"),
    ],
)
def test_source_and_line_in_one_word(source, modulator, pattern):
    """Good vacuum 18 inHg at sea level, ± 1 inHg: common practice, no source."""
    found = values("signal-vacuum", {"source": source, "modulator": modulator, "altitude": "0 m"})
    assert found["pattern"] == pattern


def test_a_cable_has_no_line():
    found = values("signal-vacuum", {"signal": "cable", "altitude": "0 m"})
    assert found["pattern"] == "no-line"


def test_one_reading_inside_its_window_tells_nothing_from_anything():
    found = values("shift-check", {**WINDOWS, "measured-1-2-light": "19 km/h"})
    assert found["pattern"] == "as-specified"
    assert {"scale", "vacuum-loss", "one-shift"} <= set(rivals(found))


def test_six_readings_inside_their_windows_have_no_rival():
    measured = {
        "measured-1-2-light": "19 km/h",
        "measured-2-3-light": "34 km/h",
        "measured-1-2-half": "46 km/h",
        "measured-2-3-half": "76 km/h",
        "measured-1-2-full": "64 km/h",
        "measured-2-3-full": "105 km/h",
    }
    found = values("shift-check", WINDOWS | measured)
    assert (found["pattern"], rivals(found)) == ("as-specified", [])


def test_a_missing_shift_beside_late_ones_is_not_that_alone():
    measured = {
        "measured-1-2-light": "31 km/h",
        "measured-2-3-light": "56 km/h",
        "measured-1-2-half": "54 km/h",
        "measured-2-3-half": "88 km/h",
        "measured-1-2-full": "65 km/h",
        "measured-2-3-full": "none",
    }
    found = values("shift-check", WINDOWS | measured)
    assert (found["pattern"], rivals(found)[0]) == ("missing-shift", "vacuum-loss")


@pytest.mark.parametrize("case", [each for each in CASES if each["calculator"] in JUDGING])
def test_nothing_else_is_ever_answered(case):
    found = run(case["calculator"], case["entries"])
    if found["ok"]:
        said = found["answer"]["values"]
        assert {said["pattern"], *rivals(said)} <= set(get(case["calculator"]).patterns)


@pytest.mark.parametrize("name", JUDGING)
def test_the_authors_guide_names_every_answer(name):
    guide = Path(__file__).parents[2] / "procedures" / "writing" / "faults.md"
    (row,) = (
        line for line in guide.read_text(encoding="utf-8").split("\n") if f"| <calc:{name}>" in line
    )
    assert row.partition("> | ")[2] == ", ".join(f"`{each}`" for each in get(name).patterns) + " |"
