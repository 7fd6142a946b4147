"""What ISO 6789 says of a torque wrench: where it may be used and how far it may be off.

Deviations are relative to the reference, what the test device reads, not to the wrench's scale.
"""

from math import isclose

from underhoist_calculators.units import Quantity, Span, quantity

SMALL_WRENCH = quantity(10, "newton_metre")
"""Up to and including this maximum a wrench may be off by 6 %, above it by 4 % (ISO 6789:2003)."""

LIMITS = 0.06, 0.04
"""Permissible deviation of small and of larger wrenches."""

LOWEST_SHARE = 0.2
"""Share of the maximum from which the 2003 edition holds a wrench to its limit."""

EDITIONS = "2003", "2017"


def at_most(one: Quantity, other: Quantity) -> bool:
    """Say whether `one` is no more than `other`, as far as a last binary digit can tell."""
    return one <= other or isclose(one.m_as("newton_metre"), other.m_as("newton_metre"))


def limit(maximum: Quantity) -> float:
    """Give the permissible deviation of a wrench by its maximum, as a share."""
    return LIMITS[0] if at_most(maximum, SMALL_WRENCH) else LIMITS[1]


def usable(scale: Span, edition: str) -> Span:
    """Give the part of the scale that the edition holds to its limit."""
    if edition == "2017":
        return scale
    return Span(max(scale.low, scale.high * LOWEST_SHARE), scale.high)


def covers(scale: Span, torque: Quantity, edition: str) -> bool:
    """Say whether the wrench may be used for the torque."""
    part = usable(scale, edition)
    return at_most(part.low, torque) and at_most(torque, part.high)


def deviation(indicated: Quantity, reference: Quantity) -> float:
    """Give (indicated − reference) / reference as a share: what the wrench says is too high."""
    return ((indicated - reference) / reference).m_as("dimensionless")


def passes(indicated: Quantity, reference: Quantity, maximum: Quantity) -> bool:
    """Say whether one reading of the test device keeps the wrench within its limit."""
    off = abs(deviation(indicated, reference))
    return off <= limit(maximum) or isclose(off, limit(maximum), rel_tol=1e-9)


def acceptance(indicated: Quantity, maximum: Quantity) -> Span:
    """Give what the test device may read at `indicated`; it is not symmetrical about it."""
    allowed = limit(maximum)
    return Span(indicated * (1 / (1 + allowed)), indicated * (1 / (1 - allowed)))


def check_points(scale: Span, edition: str) -> tuple[Quantity, Quantity, Quantity]:
    """Give the three torques at which a wrench is checked: lowest, 60 % and 100 %."""
    return usable(scale, edition).low, scale.high * 0.6, scale.high
