"""What a family states for a gauge: shown where it is stated, and nothing where it is not."""

import re

import pytest

from underhoist.pages.family import family_sheet

LIMITS = """line_pressure:
  - {selector: park, throttle: light, vacuum: 16 inHg, engine: 700 r/min, pressure: 56 to 66 psi}
  - {selector: reverse, throttle: full, engine: 700 rpm, pressure: 180 to 198 psi}
stall: {engine: 1500 to 1700 r/min, longest: 5 s, rest: 1 min}
throttle_cable: {gap: 0.5 to 1.0 mm, travel: 36 to 38 mm, turn: 1 mm}
"""
MODULATOR = "modulator: {turn: 0.6 inHg, cut_off: 17 inHg}\n"


def words(site):
    html = str(family_sheet(site, site.manual.families["wren-2"]).html)
    return " ".join(re.sub(r"<[^>]+>", " ", html).split())


def test_states_nothing_where_nothing_is_stated(site):
    shown = words(site)
    for heading in ("Throttle cable", "Line pressure", "Stall speed"):
        assert heading not in shown


@pytest.fixture
def shown(changed):
    return words(changed("families/wren-2.md", ("fluid:\n", f"{LIMITS}fluid:\n")))


def test_line_pressure_says_selector_throttle_and_the_vacuum_that_stands_for_it(shown):
    assert "Park light, 16 inHg at the modulator 700 r/min 56 to 66 psi" in shown


def test_line_pressure_without_a_modulator_says_the_throttle_alone(shown):
    assert "Reverse full 700 r/min 180 to 198 psi" in shown


def test_stall_says_how_long_and_how_long_to_rest(shown):
    assert "Engine speed 1500 to 1700 r/min" in shown
    assert "Longest time on the pedal 5 s" in shown
    assert "Rest before another, at idle in neutral 1 min" in shown


def test_cable_says_gap_travel_and_turn(shown):
    assert "Gap between stop and sheath at idle 0.5 to 1 mm" in shown
    assert "Travel from idle to full throttle 36 to 38 mm" in shown
    assert "One turn of the adjuster moves the sheath by 1 mm" in shown


def test_family_without_a_modulator_has_a_governor_only(changed):
    shown = words(changed("families/wren-2.md", (MODULATOR, "")))
    assert "Modulator and governor" not in shown
    assert "Governor Governor" in shown
