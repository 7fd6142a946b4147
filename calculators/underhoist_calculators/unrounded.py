"""The exact values behind a plate's rounded ones, in words and figures."""

import re
from fractions import Fraction

from underhoist_calculators.answer import Exact, Plate
from underhoist_calculators.units import number_text, unit_named, unit_words

FIGURES = 12
"""Significant figures of an exact value: what binary arithmetic keeps true of it."""

_NUMBER = re.compile(r"\u2212?\d[\d./ ]*")


def unrounded(plate: Plate) -> tuple[str, ...]:
    """Write the plate's exact values, its own first; nothing where it shows them whole."""
    shown = (plate.number, *plate.others)
    exact = (plate.exact, *plate.exact_others)
    is_whole = plate.exact_low is None and all(map(_is_whole, shown, exact))
    if is_whole:
        return ()
    return (_own(plate), *(f"{_number(each)} {_unit(each)}" for each in plate.exact_others))


def _own(plate: Plate) -> str:
    """Write the exact value in the plate's unit, or both its ends."""
    number = _number(plate.exact)
    # Where the words tell the direction ("turning backwards"), the figures do not repeat it.
    if "\u2212" not in plate.number:
        number = number.removeprefix("\u2212")
    low = "" if plate.exact_low is None else f"{_number(plate.exact_low)} to "
    return f"{low}{number} {plate.unit}"


def _number(exact: Exact) -> str:
    return number_text(exact.value, figures=FIGURES)


def _unit(exact: Exact) -> str:
    return unit_words(exact.unit) if unit_named(exact.unit) else exact.unit


def _is_whole(shown: str, exact: Exact) -> bool:
    """Say whether the figures shown are the exact value; the sign may be told in words."""
    found = _NUMBER.match(shown)
    if found is None:
        return False
    parts = found[0].replace("\u2212", " ").split()
    whole = Fraction(_number(exact).replace("\u2212", "-"))
    return sum(map(Fraction, parts)) == abs(whole)
