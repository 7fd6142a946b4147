"""Which unit of a torque leads, which stand beside it, and the calculator it opens."""

from collections.abc import Iterable
from functools import cache
from urllib.parse import quote_plus

from attrs import frozen
from underhoist_calculators.units import (
    Quantity,
    convert,
    show,
    show_number,
    unit_name,
    unit_named,
    unit_symbol,
    unit_words,
)

from underhoist.model import Tool

CALCULATOR, FIELD = "torque-units", "torque"
"""The calculator that a torque opens, and its field for it."""

UNITS = ("lbf*in", "lbf*ft", "N*m", "kgf*m", "kgf*cm")


@frozen
class Lead:
    """A torque as it is read first."""

    number: str
    """"120"."""
    words: str
    """"pound-force inches"."""
    text: str
    """"120 lbf·in"."""
    others: tuple[str, ...]
    """The same torque in the other units."""


def lead(torque: Quantity, tools: Iterable[Tool]) -> Lead:
    """In the scale of the first wrench that covers it, otherwise in the unit as written."""
    written = unit_name(torque)
    scale = next((tool.scale.value for tool in tools if tool.scale and _covers(tool, torque)), None)
    return _in_unit(torque, written, scale or written)


@cache
def _in_unit(torque: Quantity, written: str, unit: str) -> Lead:
    """Write the torque in the unit; `written` tells 12 lbf·ft and 144 lbf·in apart here."""
    del written
    others = (other for other in UNITS if unit_named(other) != unit_named(unit))
    return Lead(
        number=show_number(torque, unit),
        words=unit_words(unit),
        text=show(torque, unit),
        others=tuple(show(torque, other) for other in others),
    )


def in_all_units(torque: Quantity) -> tuple[str, ...]:
    """Return the torque in each of UNITS; the unit it was written in keeps its own figures."""
    return tuple(show(torque, unit) for unit in UNITS)


def unit_heads(units: Iterable[str]) -> tuple[str, ...]:
    """Return the units' symbols, as the heads of a table."""
    return tuple(unit_symbol(unit) for unit in units)


def calculator_address(torque: Quantity) -> str:
    """Address of the calculator of torque units, filled in with this torque."""
    value = quote_plus(show(torque).replace("·", "*"), safe="*")
    return f"calculators/{CALCULATOR}/?{FIELD}={value}"


def _covers(tool: Tool, torque: Quantity) -> bool:
    if tool.torque_range is None:
        return False
    span = tool.torque_range.value
    return bool(span.low <= convert(torque, unit_name(span.low)) <= span.high)
