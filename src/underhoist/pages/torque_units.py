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
    return _in_unit(_Written(torque), scale or written)


@frozen(eq=False)
class _Written:
    """A torque as it is written: 12 lbf·ft and 144 lbf·in are two. Their hash is a quick one."""

    torque: Quantity

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _Written) and self._key() == other._key()

    def __hash__(self) -> int:
        return hash(self._key())

    def _key(self) -> tuple[object, object]:
        return self.torque.magnitude, self.torque.units


@cache
def _in_unit(value: _Written, unit: str) -> Lead:
    """Write the torque in the unit."""
    torque = value.torque
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
