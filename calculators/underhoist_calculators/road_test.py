"""A road test: which shift came at which speed, against the window where it should come."""

from collections.abc import Mapping
from functools import cached_property

from attrs import field, frozen

from underhoist_calculators.units import Quantity, Span, quantity

UP_SHIFTS = ("1-2", "2-3", "3-4")
DOWN_SHIFTS = ("2-1", "3-2", "4-3")
THROTTLES = ("light", "half", "full")

OWN_SHARE = 0.05
"""Reading uncertainty as a share of the speed, where that is more than the stated one."""

Key = tuple[str, str]
"""Shift and throttle: ("1-2", "light")."""


ROWS: tuple[Key, ...] = (
    *((shift, throttle) for shift in UP_SHIFTS for throttle in THROTTLES),
    *((shift, throttle) for shift in DOWN_SHIFTS for throttle in ("full", "light")),
)
"""Every shift and throttle that a road test can hold, in the order of driving."""


def valve(shift: str) -> str:
    """Name the shift valve that makes a shift: 2-3 and 3-2 are made by one valve, "2-3"."""
    return "-".join(sorted(shift.split("-")))


def is_down(key: Key) -> bool:
    """Say whether this is a down-shift."""
    return key[0] in DOWN_SHIFTS


def is_kick_down(key: Key) -> bool:
    """Say whether this is a forced down-shift, with the pedal on the floor."""
    return is_down(key) and key[1] == "full"


def in_words(key: Key) -> str:
    """Name a shift as it is driven: "1-2 at light throttle", "3-2 kick-down", "3-2 coast-down"."""
    shift, throttle = key
    if not is_down(key):
        return f"{shift} at {throttle} throttle"
    return f"{shift} kick-down" if throttle == "full" else f"{shift} coast-down"


@frozen
class Point:
    """Middle and scatter of one window, in km/h at the reference vehicle's wheels."""

    middle: float
    half_width: float


@frozen
class RoadTest:
    """Windows by shift and throttle, speeds where measured, and shifts that never came.

    Speeds are those of the reference vehicle. A shift that was not measured is in none of these.
    """

    windows: Mapping[Key, Span]
    measured: Mapping[Key, Quantity]
    uncertainty: Quantity
    missing: frozenset[Key] = field(factory=frozenset[Key])

    @cached_property
    def points(self) -> dict[Key, Point]:
        """Middle and half width of every window."""
        return {key: _point(window) for key, window in self.windows.items()}

    @cached_property
    def speeds(self) -> dict[Key, float]:
        """Measured speeds in km/h."""
        return {key: speed.m_as("kilometre_per_hour") for key, speed in self.measured.items()}

    @cached_property
    def outside(self) -> tuple[Key, ...]:
        """What was measured outside its window."""
        return tuple(k for k, speed in self.measured.items() if not self.windows[k].holds(speed))

    @cached_property
    def scatters(self) -> dict[Key, float]:
        """One standard deviation in km/h: of the reading and of good units in the window.

        A window is taken as two standard deviations either way. Convention, no source.
        """
        stated = self.uncertainty.m_as("kilometre_per_hour")
        found: dict[Key, float] = {}
        for key, point in self.points.items():
            reading = max(stated, OWN_SHARE * self.speeds.get(key, point.middle))
            found[key] = (reading**2 + (point.half_width / 2) ** 2) ** 0.5
        return found


def _point(window: Span) -> Point:
    low, high = window.low.m_as("kilometre_per_hour"), window.high.m_as("kilometre_per_hour")
    return Point((low + high) / 2, (high - low) / 2)


def beyond(speed: Quantity, window: Span) -> Quantity:
    """Give how far a speed lies outside a window: below zero under it, zero inside."""
    if speed > window.high:
        return speed - window.high
    if speed < window.low:
        return speed - window.low
    return quantity(0, "kilometre_per_hour")
