"""Threads of the trade and the grades of steel they are cut in: stress area and proof stress.

Stress areas: ASME B1.1 (inch) and ISO 898-1 (metric). Proof stresses: SAE J429 and ISO 898-1.
"""

import re
from math import pi
from typing import NamedTuple

from attrs import frozen

from underhoist_calculators.units import Quantity, quantity

_NUMBER = re.compile(r"\d+\.\d+")

INCH_DEPTH = 0.9743
"""ASME B1.1, At = π/4 (D − 0.9743/n)², the formula for steels up to 100 000 psi."""

METRIC_DEPTH = 0.9382
"""ISO 898-1, As = π/4 (d − 0.9382 P)²; not the inch constant: the root is defined otherwise."""


@frozen
class Thread:
    """A thread by its name in drawings, its diameter and its pitch."""

    name: str
    diameter: Quantity
    pitch: Quantity
    metric: bool

    @property
    def stress_area(self) -> Quantity:
        """Give the tensile stress area, in mm² or square inches as the thread is measured."""
        depth = METRIC_DEPTH if self.metric else INCH_DEPTH
        core = self.diameter - self.pitch * depth
        return core * core * (pi / 4)


def _inch(name: str, diameter: float, per_inch: int) -> Thread:
    return Thread(name, quantity(diameter, "inch"), quantity(1 / per_inch, "inch"), metric=False)


def _metric(diameter: float, pitch: float) -> Thread:
    name = f"M{diameter:g}x{pitch:g}"
    sizes = quantity(diameter, "millimetre"), quantity(pitch, "millimetre")
    return Thread(name, *sizes, metric=True)


_INCHES = {
    "1/4": (0.25, 20, 28), "5/16": (0.3125, 18, 24), "3/8": (0.375, 16, 24),
    "7/16": (0.4375, 14, 20), "1/2": (0.5, 13, 20), "9/16": (0.5625, 12, 18),
    "5/8": (0.625, 11, 18), "3/4": (0.75, 10, 16), "7/8": (0.875, 9, 14),
}  # fmt: skip
_MILLIMETRES = (
    (5, 0.8), (6, 1), (8, 1.25), (8, 1), (10, 1.5), (10, 1.25), (10, 1), (12, 1.75), (12, 1.5),
    (12, 1.25), (14, 2), (14, 1.5), (16, 2), (16, 1.5), (18, 2.5), (18, 1.5), (20, 2.5), (20, 1.5),
)  # fmt: skip

THREADS: tuple[Thread, ...] = (
    *(_inch(f"{size}-{unc} UNC", inches, unc) for size, (inches, unc, _) in _INCHES.items()),
    *(_inch(f"{size}-{unf} UNF", inches, unf) for size, (inches, _, unf) in _INCHES.items()),
    *(_metric(diameter, pitch) for diameter, pitch in _MILLIMETRES),
)


def thread_named(text: str) -> Thread | None:
    """Find the thread by its name, as "5/16-18 UNC", "1/2-20", "M8 x 1.25" or "M6×1.0"."""
    key = _key(text)
    return next((thread for thread in THREADS if key in (_key(thread.name), _bare(thread))), None)


def _key(text: str) -> str:
    plain = "".join(text.casefold().replace("×", "x").split())
    return _NUMBER.sub(lambda number: f"{float(number[0]):g}", plain)


def _bare(thread: Thread) -> str:
    """Give the name without its series: pitch and diameter say the same."""
    return _key(thread.name.removesuffix("UNC").removesuffix("UNF"))


class Step(NamedTuple):
    """A proof stress that holds up to and including a diameter."""

    up_to: float
    stress: float


@frozen
class Grade:
    """A class of ISO 898-1 (N/mm² by mm) or a grade of SAE J429 (psi by inches)."""

    name: str
    label: str
    metric: bool
    steps: tuple[Step, ...]

    def proof_stress(self, diameter: Quantity) -> Quantity:
        """Give the proof stress; raises `ValueError` for a diameter that the grade has none for."""
        across = diameter.m_as("millimetre" if self.metric else "inch")
        unit = "newton / millimetre ** 2" if self.metric else "pound_force_per_square_inch"
        for step in self.steps:
            if across <= step.up_to:
                return quantity(step.stress, unit)
        msg = f"{self.label} is not made as thick as this."
        raise ValueError(msg)


def _class(name: str, *steps: tuple[float, float]) -> Grade:
    return Grade(name, f"Class {name}", metric=True, steps=tuple(Step(*step) for step in steps))


def _grade(number: int, *steps: tuple[float, float]) -> Grade:
    name = f"grade {number}"
    return Grade(name, f"Grade {number}", metric=False, steps=tuple(Step(*step) for step in steps))


GRADES: tuple[Grade, ...] = (
    _grade(2, (0.75, 55_000), (1.5, 33_000)),
    _grade(5, (1.0, 85_000), (1.5, 74_000)),
    _grade(8, (1.5, 120_000)),
    _class("4.8", (39, 310)),
    _class("5.8", (39, 380)),
    _class("8.8", (16, 580), (39, 600)),
    _class("10.9", (39, 830)),
    _class("12.9", (39, 970)),
)
"""Grades in the order that a list offers them. ISO 898-1 values from memory but for 8.8."""
