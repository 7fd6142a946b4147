"""Shift speed against vacuum: governor pressure against spring and modulator, from known points.

At an up-shift Pg(N) = alpha - beta·V: the governor's pressure grows with the square of the speed
(plain weight) and the modulator's falls with the vacuum. Only ratios matter, so the family's own
windows are the calibration: between two known points the square of the speed is linear in vacuum.
"""

from collections.abc import Mapping
from itertools import pairwise

from attrs import frozen

from underhoist_calculators.road_test import THROTTLES, Key, RoadTest

Vacuums = Mapping[str, float]
"""Vacuum by throttle, in inches of mercury."""


@frozen
class Curve:
    """Known points of one shift: vacuum in inHg, rising, with the square of the speed in km/h."""

    points: tuple[tuple[float, float], ...]

    def speed(self, vacuum: float) -> float:
        """Give the speed in km/h; beyond the known points it no longer depends on vacuum."""
        first, last = self.points[0], self.points[-1]
        if vacuum <= first[0]:
            return first[1] ** 0.5
        for (low, slow), (high, fast) in pairwise(self.points):
            if vacuum <= high:
                share = (vacuum - low) / (high - low)
                return (slow + share * (fast - slow)) ** 0.5
        return last[1] ** 0.5


def curve(test: RoadTest, shift: str, vacuums: Vacuums) -> Curve | None:
    """Build a shift's curve, or None without a window at full throttle and one other."""
    known = [throttle for throttle in THROTTLES if (shift, throttle) in test.windows]
    if "full" not in known or len(known) < 2:
        return None
    points = sorted((vacuums[t], test.points[shift, t].middle ** 2) for t in known)
    return Curve(tuple(points))


def with_vacuum_loss(
    test: RoadTest, vacuums: Vacuums, loss: float, curves: Mapping[str, Curve | None]
) -> dict[Key, float]:
    """Predict every window's speed in km/h after a loss in inHg; leave out what has no curve.

    Without a curve a full-throttle shift is still known: there is no vacuum left to lose.
    """
    predicted: dict[Key, float] = {}
    for shift, throttle in test.windows:
        shift_curve = curves.get(shift)
        if shift_curve is not None:
            left = max(0.0, vacuums[throttle] - loss)
            predicted[shift, throttle] = shift_curve.speed(left)
        elif throttle == "full":
            predicted[shift, throttle] = test.points[shift, throttle].middle
    return predicted


def at_full_throttle(test: RoadTest) -> dict[Key, float]:
    """Predict every shift at its full-throttle speed; leave out what has no such window."""
    return {
        (shift, throttle): test.points[shift, "full"].middle
        for shift, throttle in test.windows
        if (shift, "full") in test.windows
    }
