"""Whether a torque is plausible for a screw: T = K·F·d, with K a range and never one number.

It judges. It never makes a torque: a procedure's own figure stands, whatever comes out here.
"""

from attrs import frozen

from underhoist_calculators.thread import Grade, Thread
from underhoist_calculators.units import Quantity, quantity, unit_name

LUBRICATED, DRY = 0.12, 0.20
"""Nut factors K: from oiled or plated to dry. No single one fits the published tables."""

PRELOAD_SHARE = 0.75
"""Share of the proof load that a reusable joint is usually tightened to. Common practice."""

SLIPS = (
    ("pound_force_foot", "pound_force_inch"),
    ("pound_force_inch", "pound_force_foot"),
    ("newton_metre", "pound_force_inch"),
    ("kilogram_force_metre", "newton_metre"),
    ("kilogram_force_metre", "pound_force_foot"),
)
"""Scales that one may have been written for: as written, as meant."""


@frozen(kw_only=True)
class Screw:
    """A thread in a grade of steel, and the range of its nut factor."""

    thread: Thread
    grade: Grade
    k_low: float = LUBRICATED
    k_high: float = DRY

    @property
    def proof_load(self) -> Quantity:
        """Give stress area times proof stress, in N or lbf as the thread is measured."""
        stress = self.grade.proof_stress(self.thread.diameter)
        load = self.thread.stress_area * stress
        return load.to("newton" if self.thread.metric else "pound_force")

    def torques(self, share: float = PRELOAD_SHARE) -> tuple[Quantity, Quantity]:
        """Give the torques, lubricated and dry, that load the screw to a share of its proof."""
        load = self.proof_load * share
        low, high = (torque_for(load, self.thread.diameter, k) for k in (self.k_low, self.k_high))
        return low, high

    def shares(self, torque: Quantity) -> tuple[float, float]:
        """Give the least and the greatest share of the proof load that a torque can make."""
        loads = (preload(torque, self.thread.diameter, k) for k in (self.k_high, self.k_low))
        least, most = ((load / self.proof_load).m_as("dimensionless") for load in loads)
        return least, most


def torque_for(load: Quantity, diameter: Quantity, k: float) -> Quantity:
    """Give T = K·F·d in N·m."""
    return (load * diameter * k).to("newton_metre")


def preload(torque: Quantity, diameter: Quantity, k: float) -> Quantity:
    """Give F = T / (K·d) in N."""
    return (torque / (diameter * k)).to("newton")


def judge(torque: Quantity, screw: Screw) -> str:
    """Name the verdict: beyond-proof, high, usual, low or very-low.

    beyond-proof: above the proof load even dry. high: above 75 % of it even dry. usual: between
    the torques for 75 %, lubricated and dry. low: less. very-low: under a tenth of the proof load
    even lubricated.
    """
    least, most = screw.shares(torque)
    if least > 1:
        return "beyond-proof"
    if least > PRELOAD_SHARE:
        return "high"
    if most >= PRELOAD_SHARE:
        return "usual"
    return "low" if most >= 0.1 else "very-low"


def meant(torque: Quantity, screw: Screw) -> Quantity | None:
    """Give the same number on the scale it was likely meant for, where that would be plausible."""
    for written, other in SLIPS:
        if unit_name(torque) == written:
            guess = quantity(torque.magnitude, other)
            if judge(guess, screw) in {"usual", "low"}:
                return guess
    return None
