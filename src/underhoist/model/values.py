"""The kinds of value an author types, as types: the source reader obeys the mark on each."""

from typing import Annotated, Literal

from attrs import frozen
from underhoist_calculators.units import Quantity, Span


@frozen
class Measure:
    """Mark of a quantity: its kind in `underhoist_calculators.units`, None for whatever it says.

    `lowest` tells what is possible: only above zero, zero as well, any temperature, or anything.
    """

    kind: str | None
    lowest: Literal["above zero", "zero", "absolute zero", "none"] = "above zero"


@frozen
class Bounds:
    """Mark of a plain number: least and greatest possible value."""

    least: float
    most: float = float("inf")


@frozen
class Pattern:
    """Mark of a text that must have one form; `offers` names what an editor may offer for it."""

    regex: str
    wanted: str
    offers: Literal["", "calculators", "answers", "readings"] = ""


@frozen
class UnitOf:
    """Mark of a unit's name; `kind` where only one kind will do."""

    kind: str | None = None


@frozen
class Share:
    """Mark of a percentage; its value is the share from 0 to 1."""


@frozen
class Frequency:
    """Mark of how often something is so: one of `HOW_OFTEN` or a percentage; from 0 to 1."""


HOW_OFTEN = {
    "always": 1.0,
    "mostly": 0.9,
    "often": 0.7,
    "half the time": 0.5,
    "sometimes": 0.2,
    "seldom": 0.05,
    "never": 0.0,
}
"""What the words mean as a share of times. Our own choice: rough, and said on the page."""

_ID = r"[a-z0-9]+(-[a-z0-9]+)*"
_ID_WORDS = "lower-case letters, digits and hyphens"

Id = Annotated[str, Pattern(_ID, _ID_WORDS)]
CalculatorName = Annotated[str, Pattern(_ID, _ID_WORDS, "calculators")]
"""A calculator whose answer is one of several patterns."""
PatternName = Annotated[str, Pattern(_ID, _ID_WORDS, "answers")]
"""One of the patterns that a calculator answers."""
ReadingName = Annotated[str, Pattern(_ID, _ID_WORDS, "readings")]
"""A reading of a procedure that the page names."""
IdPath = Annotated[
    str,
    Pattern(
        r"[a-z0-9]+(-[a-z0-9]+)*(/[a-z0-9]+(-[a-z0-9]+)*)?",
        "lower-case letters, digits and hyphens, its family and a slash before it if needed",
    ),
]
WordName = Annotated[str, Pattern(r".*[^\W_].*", "at least one letter or digit")]
ShiftName = Annotated[str, Pattern(r"[1-9]-[1-9]", "two gears with a hyphen between, such as 1-2")]
Torque = Annotated[Quantity, Measure("torque")]
TorqueSpan = Annotated[Span, Measure("torque")]
Volume = Annotated[Quantity, Measure("volume")]
Turns = Annotated[Quantity, Measure("turns", "zero")]
Speed = Annotated[Quantity, Measure("speed")]
Pressure = Annotated[Quantity, Measure("pressure")]
PressureSpan = Annotated[Span, Measure("pressure")]
Vacuum = Annotated[Quantity, Measure("pressure", "zero")]
RotationSpeed = Annotated[Quantity, Measure("rotation_speed")]
RotationSpeedSpan = Annotated[Span, Measure("rotation_speed")]
Duration = Annotated[Quantity, Measure("time")]
Length = Annotated[Quantity, Measure("length")]
SpeedSpan = Annotated[Span, Measure("speed", "zero")]
LengthSpan = Annotated[Span, Measure("length", "zero")]
Limits = Annotated[Span, Measure(None, "none")]
TemperatureSpan = Annotated[Span, Measure("temperature", "absolute zero")]
Count = Annotated[int, Bounds(1)]
Minutes = Annotated[int, Bounds(1, 10_000)]
Number = Annotated[float, Bounds(0.01, 1000)]
Likelihood = Annotated[float, Share()]
HowOften = Annotated[float, Frequency()]
UnitName = Annotated[str, UnitOf()]
TorqueUnit = Annotated[str, UnitOf("torque")]
