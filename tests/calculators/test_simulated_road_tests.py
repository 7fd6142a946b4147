"""Simulated road tests with a known cause: how often is it named, left open, or missed?

Run as a script for 1,000 road tests a cause; pytest runs 200.
"""

import random
import sys
from collections import Counter

import pytest
from underhoist_calculators.road_test import RoadTest, valve
from underhoist_calculators.shift_explanations import Comparison, compare
from underhoist_calculators.shift_model import at_full_throttle, curve, curves_of, with_change
from underhoist_calculators.shift_signal import HANGS, LOSS, SLACK, TIGHT, by_cable, by_vacuum
from underhoist_calculators.units import quantity, read_span

# The demo family's windows: invented, and close to linear in vacuum between the throttles.
WINDOWS = {
    key: read_span(text)
    for key, text in {
        ("1-2", "light"): "16 to 22 km/h",
        ("1-2", "half"): "42 to 50 km/h",
        ("1-2", "full"): "60 to 68 km/h",
        ("2-3", "light"): "30 to 38 km/h",
        ("2-3", "half"): "71 to 81 km/h",
        ("2-3", "full"): "100 to 110 km/h",
        ("3-2", "full"): "86 to 96 km/h",
    }.items()
}
KICK_DOWN = ("3-2", "full")
VACUUMS = by_vacuum({"light": 16.0, "half": 8.0, "full": 0.0})
UNCERTAINTY = quantity(3, "kilometre_per_hour")

# The demo family with a cable, as with a plain governor; 3-4 above light throttle is not driven.
CABLE_WINDOWS = {
    key: read_span(text)
    for key, text in {
        ("1-2", "light"): "14 to 20 km/h",
        ("1-2", "half"): "37 to 45 km/h",
        ("1-2", "full"): "51 to 59 km/h",
        ("2-3", "light"): "29 to 37 km/h",
        ("2-3", "half"): "64 to 74 km/h",
        ("2-3", "full"): "86 to 96 km/h",
        ("3-4", "light"): "56 to 66 km/h",
        ("3-4", "half"): "92 to 104 km/h",
        ("3-4", "full"): "118 to 130 km/h",
        ("3-2", "full"): "74 to 84 km/h",
    }.items()
}
CABLE_DRIVEN = sorted(set(CABLE_WINDOWS) - {("3-4", "half"), ("3-4", "full")})
WIRE = by_cable({"light": 0.05, "half": 0.5, "full": 1.0}, travel=37.0)
CABLES = {
    "cable-tight": (TIGHT, 3.0, 12.0),
    "cable-slack": (SLACK, 3.0, 15.0),
    "cable-hangs": (HANGS, 7.0, 35.0),
}
"""What goes wrong with a cable, by at least and at most so many mm."""
CAUSES = (
    "as-specified",
    "scale",
    "vacuum-loss",
    "one-shift",
    "full-throttle",
    "kick-down",
    *CABLES,
)


def true_speeds(cause: str, chance: random.Random) -> dict[tuple[str, str], float]:
    """Speeds of every window under a cause of random size, before noise."""
    base = RoadTest(WINDOWS, {}, UNCERTAINTY)
    middles = {key: point.middle for key, point in base.points.items()}
    factor = chance.choice([chance.uniform(1.15, 1.4), chance.uniform(0.65, 0.85)])
    if cause == "scale":
        return {key: factor * speed for key, speed in middles.items()}
    if cause == "one-shift":
        bad = chance.choice(["1-2", "2-3"])
        return {k: v * (factor if valve(k[0]) == bad else 1) for k, v in middles.items()}
    if cause == "kick-down":
        return {k: v * (factor if k == KICK_DOWN else 1) for k, v in middles.items()}
    if cause == "vacuum-loss":
        curves = {shift: curve(base, shift, VACUUMS) for shift, _ in WINDOWS}
        return with_change(base, VACUUMS, LOSS, chance.uniform(2, 12), curves)
    return at_full_throttle(base) if cause == "full-throttle" else middles


def drive(cause: str, chance: random.Random, readings: int) -> RoadTest:
    """One road test of so many readings, with reading noise and the scatter of good units.

    A kick-down that is out is driven in every one: else nothing could show it.
    """
    base = RoadTest(WINDOWS, {}, UNCERTAINTY)
    speeds = true_speeds(cause, chance)
    driven = chance.sample(sorted(WINDOWS), readings)
    if cause == "kick-down" and KICK_DOWN not in driven:
        driven[0] = KICK_DOWN
    return RoadTest(WINDOWS, read(base, speeds, driven, chance), UNCERTAINTY)


def read(base, speeds, driven, chance):
    """Readings of these speeds, off by reading noise and by the scatter of good units."""
    return {
        key: quantity(
            max(1.0, chance.gauss(speeds[key], max(3.0, 0.05 * speeds[key])))
            + chance.gauss(0, base.points[key].half_width / 2),
            "kilometre_per_hour",
        )
        for key in driven
    }


def drive_cable(cause: str, chance: random.Random, readings: int) -> RoadTest:
    """One road test of a unit whose throttle cable is off by a random size."""
    base = RoadTest(CABLE_WINDOWS, {}, UNCERTAINTY)
    change, least, most = CABLES[cause]
    size = chance.uniform(least, most)
    speeds = with_change(base, WIRE, change, size, curves_of(base, WIRE))
    driven = chance.sample(CABLE_DRIVEN, readings)
    return RoadTest(CABLE_WINDOWS, read(base, speeds, driven, chance), UNCERTAINTY)


def judged(cause: str, chance: random.Random, readings: int) -> str:
    """Drive one road test of this cause and say what comes of it."""
    if cause in CABLES:
        return outcome(cause, compare(drive_cable(cause, chance, readings), WIRE))
    return outcome(cause, compare(drive(cause, chance, readings), VACUUMS))


def outcome(cause: str, found: Comparison) -> str:
    """named: the cause alone; open: the cause among what cannot be told apart; else wrong."""
    if found.best is None:
        return "no single cause"
    codes = [found.best.code, *(rival.code for rival in found.rivals)]
    if cause not in codes:
        return "wrong"
    return "named" if len(set(codes)) == 1 else "open"


def simulate(cause: str, tests: int, readings: int, seed: int = 2026) -> Counter[str]:
    """Count the outcomes of so many road tests of one cause."""
    chance = random.Random(f"{seed} {cause} {readings}")  # noqa: S311 - a repeatable draw
    return Counter(judged(cause, chance, readings) for _ in range(tests))


@pytest.mark.parametrize(
    ("cause", "readings", "named", "wrong"),
    [
        ("as-specified", 7, 0.80, 0.08),
        ("scale", 7, 0.90, 0.03),
        ("vacuum-loss", 7, 0.90, 0.03),
        ("one-shift", 7, 0.80, 0.05),
        ("kick-down", 7, 0.70, 0.10),
        ("scale", 4, 0.75, 0.05),
        ("vacuum-loss", 4, 0.70, 0.08),
        ("cable-tight", 7, 0.48, 0.06),
        ("cable-slack", 7, 0.65, 0.16),
        ("cable-hangs", 7, 0.65, 0.06),
    ],
)
def test_a_cause_is_named_rightly(cause, readings, named, wrong):
    counted = simulate(cause, 200, readings)
    assert counted["named"] >= 200 * named
    assert counted["wrong"] <= 200 * wrong


def test_a_stuck_kick_down_is_left_open_beside_a_total_vacuum_loss():
    # Both give full-throttle speeds: naming one alone would be a guess.
    counted = simulate("full-throttle", 200, 7)
    assert counted["open"] >= 200 * 0.9


def test_two_readings_leave_more_open_than_seven():
    assert simulate("vacuum-loss", 100, 2)["open"] > 5 * simulate("vacuum-loss", 100, 7)["open"]


def main() -> None:
    """Print the shares of 1,000 road tests a cause."""
    for readings in (7, 4, 2):
        for cause in CAUSES:
            counted = simulate(cause, 1000, readings)
            shares = ", ".join(f"{what} {n / 10:.1f} %" for what, n in counted.most_common())
            sys.stdout.write(f"{readings} readings, {cause}: {shares}\n")


if __name__ == "__main__":
    main()
