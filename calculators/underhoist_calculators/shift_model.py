"""Shift speed against the signal: governor pressure against spring and throttle pressure.

At an up-shift Pg(N) = alpha + b·Pm: the governor's pressure grows with the speed, and the throttle
pressure Pm changes evenly with the signal: it falls with the vacuum, or rises with the wire of a
throttle cable. Only ratios matter, so the family's own windows are the calibration: between two
known points the governor's pressure is linear in the signal.
"""

from collections.abc import Mapping
from itertools import pairwise

from attrs import frozen

from underhoist_calculators.governor import Governor
from underhoist_calculators.road_test import THROTTLES, Key, RoadTest, is_kick_down
from underhoist_calculators.shift_signal import Change, Signal


@frozen
class Curve:
    """Known points of one shift: the signal's level, rising, with the governor's pressure there.

    Levels are in inHg of vacuum, or in how far the wire is out.
    """

    points: tuple[tuple[float, float], ...]
    governor: Governor

    def speed(self, level: float) -> float:
        """Give the speed in km/h; beyond the known points it no longer depends on the signal."""
        first, last = self.points[0], self.points[-1]
        if level <= first[0]:
            return self.governor.speed(first[1])
        for (low, slow), (high, fast) in pairwise(self.points):
            if level <= high:
                share = (level - low) / (high - low)
                return self.governor.speed(slow + share * (fast - slow))
        return self.governor.speed(last[1])


Curves = Mapping[str, Curve | None]
"""Curve by shift; None where a shift has too few windows."""


def curve(test: RoadTest, shift: str, signal: Signal) -> Curve | None:
    """Build a shift's curve, or None without a window at full throttle and one other."""
    known = [throttle for throttle in THROTTLES if (shift, throttle) in test.windows]
    if "full" not in known or len(known) < 2:
        return None
    governor = signal.governor
    middles = {throttle: test.points[shift, throttle].middle for throttle in known}
    points = sorted((signal.levels[t], governor.pressure(middles[t])) for t in known)
    return Curve(tuple(points), governor)


def curves_of(test: RoadTest, signal: Signal) -> Curves:
    """Build the curve of every shift that has a window."""
    return {shift: curve(test, shift, signal) for shift, _ in test.windows}


def with_change(
    test: RoadTest, signal: Signal, change: Change, size: float, curves: Curves
) -> dict[Key, float]:
    """Predict every window's speed in km/h after a change of the signal; leave out what has none.

    A kick-down has its own valve. Without a curve full throttle is still known, if it stays.
    """
    predicted: dict[Key, float] = {}
    for key, point in test.points.items():
        shift, throttle = key
        found = curves.get(shift)
        if is_kick_down(key):
            predicted[key] = point.middle
        elif found is not None:
            predicted[key] = found.speed(change.level(signal.levels[throttle], size))
        elif throttle == "full" and not change.moves_full:
            predicted[key] = point.middle
    return predicted


def at_full_throttle(test: RoadTest) -> dict[Key, float]:
    """Predict every shift at its full-throttle speed; leave out what has no such window."""
    return {
        (shift, throttle): test.points[shift, "full"].middle
        for shift, throttle in test.windows
        if (shift, "full") in test.windows
    }
