"""Governor pressure against road speed: a plain weight, or a unit's own points.

Speeds are in km/h. Only ratios of pressures matter to a shift valve, so their unit is free.
"""

from bisect import bisect_right
from collections.abc import Sequence
from itertools import pairwise
from math import sqrt
from typing import Protocol

from attrs import field, frozen


class Governor(Protocol):
    """What a shift valve sees of the road speed. `lowest` and `highest` bound what is known."""

    @property
    def lowest(self) -> float:
        """Lowest known speed in km/h."""
        ...

    @property
    def highest(self) -> float:
        """Highest known speed in km/h."""
        ...

    def pressure(self, speed: float) -> float:
        """Give the pressure at a speed."""
        ...

    def speed(self, pressure: float) -> float:
        """Give the speed for a pressure, within what is known."""
        ...


@frozen
class PlainWeight:
    """An unsprung weight flung outwards: pressure with the square of the speed."""

    factor: float = 1.0
    lowest: float = 0.0
    highest: float = float("inf")

    def pressure(self, speed: float) -> float:
        """Give factor × speed²."""
        return self.factor * speed**2

    def speed(self, pressure: float) -> float:
        """Give the speed for a pressure; `ValueError` below zero."""
        return sqrt(pressure / self.factor)


def through_point(speed: float, pressure: float) -> PlainWeight:
    """Give the plain weight that makes this pressure at this speed."""
    return PlainWeight(pressure / speed**2)


@frozen
class Sprung:
    """A governor by its own points, speed and pressure both rising.

    Between them a cubic that never overshoots (Fritsch and Carlson 1980, with Butland's weights).
    """

    points: tuple[tuple[float, float], ...]
    slopes: tuple[float, ...] = field(init=False)

    def __attrs_post_init__(self) -> None:
        object.__setattr__(self, "slopes", _slopes(self.points))

    @property
    def lowest(self) -> float:
        """Speed of the first point."""
        return self.points[0][0]

    @property
    def highest(self) -> float:
        """Speed of the last point."""
        return self.points[-1][0]

    def pressure(self, speed: float) -> float:
        """Interpolate the pressure; beyond the ends the nearest piece goes on."""
        last = len(self.points) - 2
        at = min(max(bisect_right(self.points, (speed, float("inf"))) - 1, 0), last)
        (x0, y0), (x1, y1) = self.points[at], self.points[at + 1]
        width = x1 - x0
        t = (speed - x0) / width
        left, right = self.slopes[at] * width, self.slopes[at + 1] * width
        return (
            y0 * (1 + 2 * t) * (1 - t) ** 2
            + y1 * t**2 * (3 - 2 * t)
            + left * t * (1 - t) ** 2
            + right * t**2 * (t - 1)
        )

    def speed(self, pressure: float) -> float:
        """Find the speed by halving; the pressure must lie between the first and last point's."""
        low, high = self.lowest, self.highest
        for _ in range(60):
            middle = (low + high) / 2
            low, high = (middle, high) if self.pressure(middle) < pressure else (low, middle)
        return (low + high) / 2


def rising(points: Sequence[tuple[float, float]]) -> bool:
    """Say whether both speed and pressure rise from each point to the next."""
    return all(a[0] < b[0] and a[1] < b[1] for a, b in pairwise(points))


def _slopes(points: tuple[tuple[float, float], ...]) -> tuple[float, ...]:
    """Give a slope at each point that keeps the curve rising."""
    widths = [b[0] - a[0] for a, b in pairwise(points)]
    steps = [(b[1] - a[1]) / width for (a, b), width in zip(pairwise(points), widths, strict=True)]
    if len(steps) == 1:
        return (steps[0], steps[0])
    inner = [
        (3 * (w0 + w1)) / ((2 * w1 + w0) / s0 + (w1 + 2 * w0) / s1)
        for (w0, w1), (s0, s1) in zip(pairwise(widths), pairwise(steps), strict=True)
    ]
    first = _end(widths[0], widths[1], steps[0], steps[1])
    last = _end(widths[-1], widths[-2], steps[-1], steps[-2])
    return (first, *inner, last)


def _end(width: float, next_width: float, step: float, next_step: float) -> float:
    """Give the slope at an end by three points, kept from turning back."""
    slope = ((2 * width + next_width) * step - width * next_step) / (width + next_width)
    return max(slope, 0.0)
