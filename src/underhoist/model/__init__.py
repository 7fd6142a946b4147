"""What a manual is made of: frozen classes, one file a kind of page, nothing but data."""

from underhoist.model.access import Access, whole_minutes
from underhoist.model.family import (
    Adjustment,
    Fastener,
    FluidRule,
    GearTrain,
    LevelRule,
    Part,
    Reference,
    ShiftWindow,
    UnitFamily,
    Variant,
)
from underhoist.model.fault import Answers, Cause, Check, Fault
from underhoist.model.hazard import Hazard, RequiredWhen
from underhoist.model.hydraulics import Governor, GovernorPoint, Modulator
from underhoist.model.limits import LinePressure, Stall, ThrottleCable
from underhoist.model.manual import Manual
from underhoist.model.page import Body, Draft, Page, PlainPage
from underhoist.model.procedure import Procedure, Reading
from underhoist.model.tool import Tool
from underhoist.model.word import Word

__all__ = [
    "Access", "Adjustment", "Answers", "Body", "Cause", "Check", "Draft", "Fastener", "Fault",
    "FluidRule", "GearTrain", "Governor", "GovernorPoint", "Hazard", "LevelRule", "LinePressure",
    "Manual", "Modulator", "Page", "Part", "PlainPage", "Procedure", "Reading", "Reference",
    "RequiredWhen", "ShiftWindow", "Stall", "ThrottleCable", "Tool", "UnitFamily", "Variant",
    "Word", "whole_minutes",
]  # fmt: skip
