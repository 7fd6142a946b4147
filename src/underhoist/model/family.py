"""`kind: unit-family`: everything that is true of one family of transmissions, each value once."""

from collections.abc import Mapping
from typing import Literal

from attrs import field, frozen

from underhoist.model.hydraulics import Governor, Modulator
from underhoist.model.limits import LinePressure, Stall, ThrottleCable
from underhoist.model.page import Page
from underhoist.model.values import (
    Count,
    Id,
    LengthSpan,
    Number,
    ShiftName,
    SpeedSpan,
    TemperatureSpan,
    Torque,
    Turns,
    Volume,
)
from underhoist.place import Placed

Grade = Literal["grade 2", "grade 5", "grade 8", "4.8", "5.8", "8.8", "10.9", "12.9"]
"""Grades of SAE J429 for inch threads, classes of ISO 898-1 for metric ones."""


@frozen(kw_only=True)
class GearTrain:
    """How the gear set is built; the ratios are computed from the tooth counts."""

    type: Placed[Literal["simpson", "simpson-overdrive", "ravigneaux"]] = field(
        metadata={"help": "simpson, simpson-overdrive or ravigneaux."}
    )
    teeth: Mapping[str, Placed[Count]] = field(
        metadata={"help": "Tooth counts by gear: sun, ring, planet; planets is how many there are."}
    )


@frozen(kw_only=True)
class Reference:
    """The vehicle that the shift windows are stated for."""

    tyre: Placed[str] = field(metadata={"help": "Tyre size as on its wall, e.g. 205/70 R 14."})
    axle: Placed[Number] = field(metadata={"help": "Final-drive ratio, e.g. 2.92."})


@frozen(kw_only=True)
class ShiftWindow:
    """The road speeds between which one shift should come."""

    shift: Placed[ShiftName] = field(metadata={"help": "Gears, e.g. 1-2; a kick-down is 3-2."})
    throttle: Placed[Literal["light", "half", "full"]] = field(
        metadata={"help": "light, half or full."}
    )
    speed: Placed[SpeedSpan] = field(
        metadata={"help": "Lowest to highest road speed, e.g. 16 to 22 km/h."}
    )


@frozen(kw_only=True)
class LevelRule:
    """How the fluid level is read."""

    selector: Placed[Literal["park", "neutral"]] = field(
        metadata={"help": "Selector position: park or neutral."}
    )
    temperature: Placed[TemperatureSpan] = field(
        metadata={"help": "Fluid temperature, e.g. 65 to 80 degC."}
    )
    between_marks: Placed[Volume] = field(
        metadata={"help": "Volume between the low and the full mark, e.g. 0.5 L."}
    )


@frozen(kw_only=True)
class FluidRule:
    """Which fluid, how much and how it is read."""

    specification: Placed[str] = field(metadata={"help": "The fluid this family was built for."})
    accepts: tuple[Placed[str], ...] = field(
        default=(), metadata={"help": "Later specifications that supersede it."}
    )
    never_with: tuple[Placed[str], ...] = field(
        default=(), metadata={"help": "Fluids that must not be mixed with it."}
    )
    service_fill: Placed[Volume] = field(
        metadata={"help": "What a normal service takes, e.g. 4.2 L."}
    )
    dry_fill: Placed[Volume] = field(
        metadata={"help": "What the empty unit with converter takes, e.g. 8.6 L."}
    )
    level: LevelRule = field(metadata={"help": "How the level is read."})


@frozen(kw_only=True)
class Fastener:
    """Something that is tightened, and its torque: the one place where the value stands."""

    name: Placed[str] = field(metadata={"help": "What it is, e.g. Pan bolts."})
    torque: Placed[Torque] = field(metadata={"help": "Tightening torque, e.g. 9 lbf*ft."})
    thread: Placed[str] | None = field(
        default=None, metadata={"help": "Thread, e.g. 5/16-18 UNC or M8 x 1.25."}
    )
    grade: Placed[Grade] | None = field(
        default=None, metadata={"help": "Strength, if known, e.g. grade 5 or 8.8."}
    )
    limited_by: Placed[str] | None = field(
        default=None,
        metadata={"help": "Why it is so little for the thread, if it is, e.g. Cork gasket."},
    )
    count: Placed[Count] | None = field(default=None, metadata={"help": "How many there are."})
    note: Placed[str] | None = field(default=None, metadata={"help": "A word of advice."})


@frozen(kw_only=True)
class Adjustment:
    """A setting made by seating an adjuster and backing it off."""

    name: Placed[str] = field(metadata={"help": "What is set, e.g. Front band."})
    seat: Placed[Id] = field(
        metadata={"help": "Id of the fastener whose torque seats it.", "to": "torque"}
    )
    back_off: Placed[Turns] = field(metadata={"help": "Turns back off, e.g. 1 1/2 turns."})
    lock: Placed[Id] | None = field(
        default=None, metadata={"help": "Id of the fastener that locks it.", "to": "torque"}
    )


@frozen(kw_only=True)
class Variant:
    """One of several look-alike parts and what tells it from the others."""

    name: Placed[str] = field(metadata={"help": "What the shop calls this one."})
    tell: Placed[str] = field(metadata={"help": "Stamp, colour, date or place that tells it."})
    measures: Mapping[str, Placed[LengthSpan]] = field(
        factory=dict[str, Placed[LengthSpan]],
        metadata={"help": "Measured sizes, e.g. outside diameter: 52.0 to 52.2 mm."},
    )


@frozen(kw_only=True)
class Part:
    """A part that is bought, with its look-alikes."""

    name: Placed[str] = field(metadata={"help": "What the shop calls it."})
    variants: tuple[Variant, ...] = field(
        default=(), metadata={"help": "Look-alikes, told apart by measuring."}
    )


@frozen(kw_only=True)
class UnitFamily(Page):
    """A family of transmissions."""

    gear_train: GearTrain = field(metadata={"help": "Type and tooth counts."})
    ratios: Mapping[str, Placed[Number]] = field(
        factory=dict[str, Placed[Number]],
        metadata={"help": "Stated ratios by gear, checked against the teeth."},
    )
    reference: Reference = field(metadata={"help": "Tyre and axle the shift windows belong to."})
    shift_windows: tuple[ShiftWindow, ...] = field(
        default=(), metadata={"help": "Where each shift should come."}
    )
    modulator: Modulator | None = field(
        default=None, metadata={"help": "What the adjuster does and where the modulator ends."}
    )
    governor: Governor | None = field(
        default=None, metadata={"help": "Points of a spring-calibrated governor."}
    )
    throttle_cable: ThrottleCable | None = field(
        default=None, metadata={"help": "How the cable of the throttle valve is set."}
    )
    line_pressure: tuple[LinePressure, ...] = field(
        default=(), metadata={"help": "Line pressures of a sound unit, for the line-pressure test."}
    )
    stall: Stall | None = field(
        default=None, metadata={"help": "Stall speed, and how long the test may last."}
    )
    fluid: FluidRule = field(metadata={"help": "Fluid, fills and level rule."})
    fasteners: Mapping[Id, Fastener] = field(
        factory=dict[str, Fastener], metadata={"help": "Every tightened thing by id."}
    )
    adjustments: Mapping[Id, Adjustment] = field(
        factory=dict[str, Adjustment], metadata={"help": "Every band setting by id."}
    )
    parts: Mapping[Id, Part] = field(factory=dict[str, Part], metadata={"help": "Parts by id."})
