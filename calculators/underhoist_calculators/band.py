"""A band adjuster: what its turns come to in clearance and wear, and a slip in its seat torque."""

from itertools import permutations
from math import isclose

from attrs import frozen

from underhoist_calculators.calculators.torque_units import SCALES
from underhoist_calculators.units import Quantity, quantity

WORN = quantity(0.25, "turn")
"""Turns between as-found and as-left that show a worn band. Common practice, no source."""

CLOSE = 0.05
"""Share within which a torque counts as the same."""


@frozen(kw_only=True)
class Adjuster:
    """A screw on a band. `lever` is the way of the band's end over the way of the screw."""

    pitch: Quantity
    starts: int = 1
    lever: float = 1.0

    @property
    def per_turn(self) -> Quantity:
        """Give the clearance that one turn makes: starts · pitch · lever ratio."""
        return self.pitch * (self.starts * self.lever)

    def clearance(self, turns: Quantity) -> Quantity:
        """Give the clearance of so many turns off the seat; the sign is kept."""
        return self.per_turn * turns.m_as("turn")

    def turns(self, clearance: Quantity) -> Quantity:
        """Give the turns that make a clearance."""
        return quantity((clearance / self.per_turn).m_as("dimensionless"), "turn")


def wear(as_found: Quantity, as_left: Quantity) -> Quantity:
    """Give the turns that wear has taken up; below zero it was set tighter than it is left now."""
    return quantity(as_found.m_as("turn") - as_left.m_as("turn"), "turn")


def is_worn(turns: Quantity) -> bool:
    """Say whether so many turns of wear show a worn band."""
    return turns >= WORN or isclose(turns.m_as("turn"), WORN.m_as("turn"))


def slip(specified: Quantity, used: Quantity) -> tuple[str, str] | None:
    """Give the scale read from and the scale set on, where the seat torque is a probable slip.

    It is one when the wrench was set within 5 % of one of the specification's numbers on another
    scale than the number is for. No two scales are so close that the right torque could be one.
    """
    got = used.m_as("newton_metre")
    best: tuple[float, tuple[str, str]] | None = None
    for meant, read_on in permutations(SCALES, 2):
        wrong = quantity(specified.m_as(meant), read_on).m_as("newton_metre")
        off = abs(got - wrong) / wrong
        # The small allowance keeps exactly 5 % in, whatever unit it was written in.
        if off <= CLOSE + 1e-12 and (best is None or off < best[0]):
            best = off, (meant, read_on)
    return best[1] if best else None
