"""How far a tyre rolls in one turn: which convention, and how the wheel's speed follows."""

from math import pi

from attrs import frozen

from underhoist_calculators.declare import Choice
from underhoist_calculators.inputs import EntryError, Inputs
from underhoist_calculators.tyre import RADIAL_FACTOR, Tyre
from underhoist_calculators.units import Quantity, quantity, show

EMPIRICAL = 0.975
"""Dynamic rolling radius over nominal radius: a default of the JRC's open CO2 model."""

FACTORS = {"radial": RADIAL_FACTOR, "empirical": EMPIRICAL * pi, "circle": pi}
"""Rolling circumference over nominal diameter, by convention."""

CHOICES = (
    Choice("radial", "3.05 × diameter: loaded radial tyre"),
    Choice("empirical", "0.975 × π × diameter: rolling under load, empirical"),
    Choice("circle", "π × diameter: geometric circle, 3 % too far"),
)
"""The conventions to choose from. A rolled circumference needs none."""

SOURCES = (
    "Tyre: nominal diameter rim + 2 × aspect × width, as UN Regulation 30 but not rounded.",
    "3.05 × diameter: ETRTO practice for radial tyres, from memory. 0.975 × π × diameter: default "
    "of the European Commission JRC's open CO2 model.",
)
"""What the conventions rest on."""


@frozen
class Rolling:
    """What one turn of the wheel covers, in words how it was found, and how well it is known."""

    circumference: Quantity
    how: str
    uncertainty: float

    @property
    def turns(self) -> Quantity:
        """Turns of the wheel over a kilometre."""
        return quantity(1000 / self.circumference.m_as("metre"), "turn_per_kilometre")


def roll_fitted(inputs: Inputs) -> Rolling:
    """Roll the tyre of the entries `tyre` and `convention`; raises `EntryError` without one."""
    tyre = inputs.tyre("tyre")
    if tyre is None:
        raise EntryError("tyre", "No tyre is written.", "Write 205/70 R 14, or 1.95 m as rolled.")
    return roll(tyre, inputs.word("convention") or "radial")


def roll(tyre: Tyre, convention: str) -> Rolling:
    """Roll the tyre by this convention, a key of FACTORS; a rolled tyre stays as it was rolled.

    A size is good for 3 % (wear, load and pressure), a rolled turn for 0.5 %: common practice,
    no source.
    """
    if tyre.diameter is None:
        return Rolling(tyre.circumference, tyre.how, 0.005)
    factor = FACTORS[convention]
    metres = factor * tyre.diameter.m_as("metre")
    words = {"radial": "3.05", "empirical": "0.975 × π", "circle": "π"}[convention]
    how = f"{words} × {show(tyre.diameter, 'millimetre', 1)}"
    return Rolling(quantity(metres, "metre"), how, 0.03)
