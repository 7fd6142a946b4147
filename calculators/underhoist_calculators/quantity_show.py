"""Writes quantities: rounded half up, never in powers of ten, fractions of a turn as fractions."""

from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction
from math import isfinite

from underhoist_calculators.quantity_text import unit_named
from underhoist_calculators.registry import Quantity, same_dimension, unit_name
from underhoist_calculators.unit_error import UnitError
from underhoist_calculators.unit_table import BY_NAME, KIND_WORDS, Unit

AS_WRITTEN = 6
"""Significant figures kept of a value in the unit it was written in."""

CONVERTED = 3
"""Significant figures shown of a converted value; whole numbers keep all of theirs."""


def convert(value: Quantity, unit: str) -> Quantity:
    """Give the quantity in `unit` (any spelling); raises `UnitError` where the kinds differ."""
    wanted = _named(unit)
    if not same_dimension(value, wanted.name):
        wrong = f"{show(value)} cannot be given in {wanted.symbol}."
        mend = f"Ask for a unit of {KIND_WORDS[kind_of(value)]}."
        raise UnitError("unit-wrong-kind", show(value), wrong, mend)
    return value.to(wanted.name)


def kind_of(value: Quantity) -> str:
    """Name the kind, a key of KINDS; raises `UnitError` for a product without one."""
    name = unit_name(value)
    unit = BY_NAME.get(name)
    if unit is not None:
        return unit.kind
    for candidate in BY_NAME.values():
        if same_dimension(value, candidate.name):
            return candidate.kind
    mend = "Use a torque, a volume, a speed or another quantity of the trade."
    raise UnitError("unit-wrong-kind", name, f"{name} is not a unit used here.", mend)


def show(value: Quantity, unit: str | None = None, digits: int | None = None) -> str:
    """Write the quantity, e.g. "120 lbf·in", "1 1/2 turns"; `digits` are decimals."""
    given = convert(value, unit) if unit is not None else value
    number = show_number(value, unit, digits)
    symbol = _symbol(unit_name(given), given.magnitude)
    return f"{number}{symbol}" if symbol == "°" else f"{number} {symbol}".rstrip()


def show_number(value: Quantity, unit: str | None = None, digits: int | None = None) -> str:
    """Write the number alone, as `show` does: for plates, where the unit stands below it."""
    given = convert(value, unit) if unit is not None else value
    if unit_name(given) == "turn" and digits is None and (text := _mixed(given.magnitude)):
        return text
    figures = AS_WRITTEN if unit_name(given) == unit_name(value) else CONVERTED
    return number_text(given.magnitude, digits, figures=figures)


def unit_words(unit: str) -> str:
    """Write the unit in full, plural: "pound-force inches". Any spelling will do."""
    return _named(unit).many


def unit_symbol(unit: str) -> str:
    """Write the unit's usual symbol: "lbf·in". Any spelling will do."""
    return _named(unit).symbol


def number_text(value: float, digits: int | None = None, *, figures: int = AS_WRITTEN) -> str:
    """Write a number rounded half up, to `digits` decimals or so many significant figures."""
    if not isfinite(value):
        msg = f"{value} cannot be written as a number"
        raise ValueError(msg)
    exact = Decimal(repr(value))
    if digits is None:
        places = max(0, figures - 1 - exact.adjusted()) if exact else 0
        text = f"{exact.quantize(Decimal(1).scaleb(-places), ROUND_HALF_UP):f}"
        text = text.rstrip("0").rstrip(".") if places else text
    else:
        text = f"{exact.quantize(Decimal(1).scaleb(-digits), ROUND_HALF_UP):f}"
    return (text.lstrip("-") if Decimal(text) == 0 else text).replace("-", "\u2212")


def _named(unit: str) -> Unit:
    """Find the unit or raise `UnitError`."""
    named = unit_named(unit)
    if named is None:
        wrong = f'"{unit}" is not a unit known here.'
        raise UnitError("unit-unknown", unit, wrong, "Write a unit such as lbf·ft, L or km/h.")
    return named


def _symbol(name: str, number: float) -> str:
    """Write the unit's symbol, or its words in the right number where the symbol is a word."""
    unit = BY_NAME.get(name)
    if unit is None:
        return name
    if unit.kind in {"turns", "level"}:
        return unit.one if 0 < abs(number) <= 1 else unit.many
    return unit.symbol


def _mixed(number: float) -> str | None:
    """Write "1 1/2" for sixteenths of a turn and coarser, otherwise nothing."""
    sixteenths = number * 16
    if abs(sixteenths - round(sixteenths)) > 1e-9:
        return None
    whole, part = divmod(Fraction(abs(round(sixteenths)), 16), 1)
    sign = "\u2212" if number < 0 and (whole or part) else ""
    if not part:
        return f"{sign}{whole}"
    return f"{sign}{whole} {part}" if whole else f"{sign}{part}"
