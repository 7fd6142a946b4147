"""Which unit of a torque leads, which stand beside it, and the calculator it opens."""

from collections.abc import Iterable
from urllib.parse import quote_plus

from attrs import frozen
from underhoist_calculators.units import (
    Quantity,
    convert,
    show,
    show_number,
    unit_name,
    unit_symbol,
    unit_words,
)

from underhoist.model import Tool
from underhoist.pages.site import Site

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
    unit = next((tool.scale.value for tool in tools if tool.scale and _covers(tool, torque)), None)
    unit = unit or unit_name(torque)
    return Lead(
        number=show_number(torque, unit),
        words=unit_words(unit),
        text=show(torque, unit),
        others=tuple(
            show(torque, other) for other in UNITS if unit_symbol(other) != unit_symbol(unit)
        ),
    )


def in_all_units(torque: Quantity) -> tuple[str, ...]:
    """Return the torque in each of UNITS; the unit it was written in keeps its own figures."""
    return tuple(show(torque, unit) for unit in UNITS)


def unit_heads(units: Iterable[str]) -> tuple[str, ...]:
    """Return the units' symbols, as the heads of a table."""
    return tuple(unit_symbol(unit) for unit in units)


def calculator_address(site: Site, torque: Quantity) -> str:
    """Address of the calculator that takes a torque, filled in with this one."""
    for calculator in site.calculators.values():
        for field in calculator.fields:
            if field.fills_from == "torque":
                value = quote_plus(show(torque).replace("·", "*"), safe="*")
                return f"calculators/{calculator.name}/?{field.name}={value}"
    return "calculators/"


def _covers(tool: Tool, torque: Quantity) -> bool:
    if tool.torque_range is None:
        return False
    span = tool.torque_range.value
    return bool(span.low <= convert(torque, unit_name(span.low)) <= span.high)
