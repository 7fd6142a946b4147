"""The only module that talks to pint: one registry of the trade's units, given exact types."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING, Any, cast

import pint
from attrs import frozen

from underhoist_calculators.unit_table import BY_NAME

if TYPE_CHECKING:

    class Quantity:
        """A number with its unit, as pint keeps it. Sums and comparisons want one dimension."""

        @property
        def magnitude(self) -> float:
            """The number, in the quantity's own unit."""
            ...

        @property
        def units(self) -> object:
            """The unit; `unit_name(quantity)` gives its name."""
            ...

        def to(self, unit: str, /) -> Quantity:
            """Convert to the unit of this registry name."""
            ...

        def m_as(self, unit: str, /) -> float:
            """Return the number in the unit of this registry name."""
            ...

        def __add__(self, other: Quantity, /) -> Quantity: ...
        def __sub__(self, other: Quantity, /) -> Quantity: ...
        def __neg__(self) -> Quantity: ...
        def __abs__(self) -> Quantity: ...
        def __mul__(self, other: Quantity | float, /) -> Quantity: ...
        def __rmul__(self, other: float, /) -> Quantity: ...
        def __truediv__(self, other: Quantity | float, /) -> Quantity: ...
        def __lt__(self, other: Quantity, /) -> bool: ...
        def __le__(self, other: Quantity, /) -> bool: ...
        def __gt__(self, other: Quantity, /) -> bool: ...
        def __ge__(self, other: Quantity, /) -> bool: ...


_REGISTRY: Any = cast("Any", pint.UnitRegistry)(Path(__file__).with_name("units.txt"))
# Pickled and copied quantities come back to this registry, and pint never reads its own large one.
cast("Any", pint).set_application_registry(_REGISTRY)

if not TYPE_CHECKING:
    Quantity = _REGISTRY.Quantity


@frozen
class Span:
    """From `low` to `high`, both included, of one kind."""

    low: Quantity
    high: Quantity

    def holds(self, value: Quantity) -> bool:
        """Say whether the value lies between the two ends or on one of them."""
        return self.low <= value <= self.high


def quantity(value: float, unit: str) -> Quantity:
    """Make a quantity of `value` in the unit of this registry name, e.g. `newton_metre`."""
    return _REGISTRY.Quantity(value, unit)


def unit_name(value: Quantity) -> str:
    """Return the registry name of the quantity's unit; products have composed names."""
    parts = tuple(cast("Any", value).unit_items())
    # Nearly every quantity has one named unit; pint's own formatting is ten times slower.
    if len(parts) == 1 and parts[0][1] == 1:
        return parts[0][0]
    return str(cast("Any", value).units)


@cache
def _dimension(unit: str) -> object:
    return _REGISTRY.Quantity(1.0, unit).dimensionality


def same_dimension(value: Quantity, unit: str) -> bool:
    """Say whether the quantity can be given in that unit. Points and differences never mix."""
    if cast("Any", value).dimensionality != _dimension(unit):
        return False
    differs = "temperature_difference"
    own = BY_NAME.get(unit_name(value))
    return own is None or (own.kind == differs) == (BY_NAME[unit].kind == differs)
