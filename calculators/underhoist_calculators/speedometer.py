"""Speedometer gears: how many driven teeth make the reading right, and never too low."""

from collections.abc import Iterable
from math import floor

from underhoist_calculators.units import Quantity, quantity

SLACK = 1e-9
"""Teeth by which a computed count may miss a whole one through rounding."""


def needed_teeth(drive: int, axle: float, tyre: Quantity, cable: Quantity) -> float:
    """Give the driven teeth for a true reading: drive · axle · tyre turns / cable turns.

    Both turns are over a distance.
    """
    return drive * axle * (tyre / cable).m_as("dimensionless")


def needed_from_reading(fitted: int, indicated: Quantity, true: Quantity) -> float:
    """Give the driven teeth for a true reading from a proven error: reads high, more teeth."""
    return fitted * (indicated / true).m_as("dimensionless")


def reading_error(needed: float, fitted: int) -> float:
    """Give by which share the speedometer reads high with a gear; below zero it reads low."""
    return needed / fitted - 1


def best(needed: float, available: Iterable[int]) -> int | None:
    """Give the most teeth that do not read low, or None where every gear does."""
    ceiling = floor(needed + SLACK)
    return max((teeth for teeth in available if teeth <= ceiling), default=None)


def cable_speed(road: Quantity, cable: Quantity) -> Quantity:
    """Give the speed of a cable that turns so often over a distance."""
    kilometres = road.m_as("kilometre_per_hour") / 60
    return quantity(kilometres * cable.m_as("turn_per_kilometre"), "revolution_per_minute")


def adapter_ratio(wanted: Quantity, supplied: Quantity) -> float:
    """Give the ratio of an adapter that makes the supplied cable turns into the wanted ones."""
    return (wanted / supplied).m_as("dimensionless")


def highest_reading(true: Quantity) -> Quantity:
    """Give the highest lawful reading at a true speed: UN Regulation 39, V/10 + 4 km/h more."""
    return true * 1.1 + quantity(4, "kilometre_per_hour")
