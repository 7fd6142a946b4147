"""What a sound unit shows when it is measured: line pressure, stall speed, throttle cable."""

from typing import Literal

from attrs import field, frozen

from underhoist.model.values import (
    Duration,
    Length,
    LengthSpan,
    PressureSpan,
    RotationSpeed,
    RotationSpeedSpan,
    Vacuum,
)
from underhoist.place import Placed


@frozen(kw_only=True)
class LinePressure:
    """The line pressure in one selector position at one throttle."""

    selector: Placed[Literal["park", "neutral", "reverse", "drive"]] = field(
        metadata={"help": "Selector position: park, neutral, reverse or drive."}
    )
    throttle: Placed[Literal["light", "half", "full"]] = field(
        metadata={"help": "light, half or full: what the signal says, whatever the engine does."}
    )
    vacuum: Placed[Vacuum] | None = field(
        default=None,
        metadata={"help": "Vacuum that stands for this throttle, for a modulator, e.g. 16 inHg."},
    )
    engine: Placed[RotationSpeed] = field(
        metadata={"help": "Engine speed while it is read, e.g. 1000 r/min."}
    )
    pressure: Placed[PressureSpan] = field(
        metadata={"help": "Lowest to highest good pressure, e.g. 60 to 70 psi."}
    )


@frozen(kw_only=True)
class Stall:
    """What the engine reaches against the held converter, and how long that may last."""

    engine: Placed[RotationSpeedSpan] = field(
        metadata={"help": "Lowest to highest good engine speed, e.g. 1700 to 1950 r/min."}
    )
    longest: Placed[Duration] = field(
        metadata={"help": "Longest time on the pedal for one reading, e.g. 5 s."}
    )
    rest: Placed[Duration] = field(
        metadata={"help": "Time at idle in neutral before the next one, e.g. 60 s."}
    )


@frozen(kw_only=True)
class ThrottleCable:
    """Where a cable stands that tells the throttle valve how far the pedal is down."""

    gap: Placed[LengthSpan] = field(
        metadata={"help": "Gap between the wire's stop and the sheath at idle, e.g. 0.5 to 1 mm."}
    )
    travel: Placed[LengthSpan] = field(
        metadata={"help": "How far the wire moves from idle to full throttle, e.g. 36 to 38 mm."}
    )
    turn: Placed[Length] = field(
        metadata={"help": "How far one turn of the adjuster moves the sheath, e.g. 1 mm."}
    )
