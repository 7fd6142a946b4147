"""Reads quantities as workshops write them, and asks back where a text can mean two things."""

import re
import unicodedata
from difflib import get_close_matches

from underhoist_calculators.registry import Quantity, Span, quantity, same_dimension
from underhoist_calculators.unit_error import UnitError
from underhoist_calculators.unit_table import AMBIGUOUS, BY_NAME, KIND_WORDS, UNITS, Unit, units_of

_NUMBER = r"[+-]?(?:\d+ \d+/\d+|\d+/\d+|\d+(?:\.\d*)?(?:e[+-]?\d+)?|\.\d+(?:e[+-]?\d+)?)"
_QUANTITY = re.compile(rf"({_NUMBER})(?![\d.,/])\s*(.*)", re.IGNORECASE)
_RANGE = re.compile(
    rf"({_NUMBER})(?![\d.,/])(.*?)\s*(?:\bto\b|–|—|(?<=\w)\s*-\s*(?=\d))\s*({_NUMBER})"
    r"(?![\d.,/])(.*)",
    re.IGNORECASE,
)
_COMMA = re.compile(r"(?<=\d),(?=\d)")
_THOUSANDS = re.compile(r"(?<=\d),(?=\d{3}(?!\d))")
_SMALL_SIGNS = frozenset("⁺⁻₊₋")
_RAISED = re.compile(r"(?<![^\W\d_])(?<!\^)\^")
"""A small digit that belongs to no unit: cm² has a letter before it."""
_LONGEST = 200
"""Characters; no quantity needs more."""
_SMALLEST, _LARGEST = 1e-9, 1e12
"""Bounds of a number that can be meant, in any unit of the trade."""


def read_quantity(text: str, kind: str | None = None) -> Quantity:
    """Read "9 lbf·ft", "1 1/2 turns" or "4.2 L", of `kind` (a key of KINDS) if one is given.

    Raises `UnitError` for a missing, unknown, ambiguous or wrong unit, and for no finite number.
    """
    written = text.strip()
    plain = _plain(written, kind)
    found = _QUANTITY.fullmatch(plain)
    if found is None:
        raise _no_number(written, plain, kind)
    number, unit = found.groups()
    value = _number(number, written, kind)
    return quantity(value, _unit(unit, number, written, kind).name)


def read_span(text: str, kind: str | None = None) -> Span:
    """Read "65 to 80 degC": two numbers and a unit, of `kind` if one is given.

    Raises `UnitError` as `read_quantity` does, and for a low end above the high end.
    """
    written = text.strip()
    plain = _plain(written, kind)
    found = _RANGE.fullmatch(plain)
    if found is None:
        raise _no_span(written, plain, kind)
    low, low_unit, high, high_unit = (part.strip() for part in found.groups())
    upper = _unit(high_unit, f"{low} to {high}", written, kind)
    lower = _unit(low_unit, low, written, kind) if low_unit else upper
    span = Span(
        quantity(_number(low, written, kind), lower.name),
        quantity(_number(high, written, kind), upper.name),
    )
    if not same_dimension(span.low, upper.name):
        wrong = f"{lower.symbol} and {upper.symbol} are units of different things."
        raise UnitError("unit-wrong-kind", written, wrong, "Write both ends in one unit.")
    if span.low > span.high:
        wrong = f"The low end {low} is above the high end {high}."
        mend = f"Write {high} {high_unit if low_unit else ''} to {low} {low_unit or high_unit}."
        raise UnitError("impossible-range", written, wrong, " ".join(mend.split()))
    return span


def unit_named(text: str) -> Unit | None:
    """Find the unit that this spelling names, or None."""
    return BY_NAME.get(text) or _SPELLINGS.get(_key(text))


def _plain(written: str, kind: str | None) -> str:
    """Make typographic fractions, minus signs and spaces plain.

    Raises `UnitError` for what is far too long, and for 10²: a raised digit is a power.
    """
    if len(written) > _LONGEST:
        wrong = "This is too long for a quantity."
        raise UnitError("not-a-number", written[:80], wrong, _ask(kind))
    if _RAISED.search("".join("^" if _is_small(sign) else sign for sign in written)):
        wrong = "A number is written with plain digits, neither raised, lowered nor in a circle."
        raise UnitError("not-a-number", written[:80], wrong, _ask(kind))
    spaced = "".join(f" {sign}" if _is_fraction(sign) else sign for sign in written)
    plain = unicodedata.normalize("NFKC", spaced)
    return " ".join(plain.replace("\u2044", "/").replace("\u2212", "-").split())


def _is_fraction(sign: str) -> bool:
    return "<fraction>" in unicodedata.decomposition(sign)


def _is_small(sign: str) -> bool:
    """Whether the sign would turn into a plain digit, or a sign before one, and is not one."""
    if sign in _SMALL_SIGNS:
        return True
    held = unicodedata.normalize("NFKC", sign)
    return not (sign.isdecimal() or _is_fraction(sign)) and any(map(str.isdecimal, held))


def _key(spelling: str) -> str:
    """Take case, dots, hyphens and double spaces out of a spelling."""
    plain = unicodedata.normalize("NFKC", spelling).casefold().replace("°", "deg")
    return " ".join(re.sub(r"[·⋅∙•×*._()-]", " ", plain).split())


def _number(text: str, written: str, kind: str | None) -> float:
    """Read "12", "1/2" or "1 1/2"; raises `UnitError` for a number nobody can mean."""
    value = 0.0
    for part in text.lstrip("+-").split():
        top, _, bottom = part.partition("/")
        if bottom and float(bottom) == 0:
            raise UnitError(
                "not-a-number", written, "A fraction cannot be divided by nothing.", _ask(kind)
            )
        value += float(top) / float(bottom) if bottom else float(top)
    if value and not _SMALLEST <= value <= _LARGEST:
        size = "large" if value > 1 else "small"
        raise UnitError(
            "not-a-number", written, f"The number is too {size} to be meant.", _ask(kind)
        )
    return -value if text.startswith("-") else value


def _unit(text: str, number: str, written: str, kind: str | None) -> Unit:
    """Find the unit; raises `UnitError` where it is none, one of two, or of another kind."""
    if not text:
        return _unit_left_out(number, written, kind)
    key = _key(text)
    if key in AMBIGUOUS:
        first, second = AMBIGUOUS[key]
        wrong = f'"{text}" can be US or imperial.'
        mend = f"Write {number} {first} or {number} {second}."
        raise UnitError("unit-ambiguous", written, wrong, mend)
    if "dry" in key.split():
        wrong = f'"{text}" is a dry measure, for grain, and not the same as one for fluid.'
        raise UnitError("unit-wrong-kind", written, wrong, f"Write {_choices(number, 'volume')}.")
    unit = _SPELLINGS.get(key)
    if unit is None:
        raise _unknown(text, number, written, kind)
    if kind is None or unit.kind == kind or _may_stand_for(unit.kind, kind):
        return BY_NAME.get(f"delta_{unit.name}", unit) if kind == _DIFFERENCE else unit
    wrong = f"{unit.symbol} is a unit of {KIND_WORDS[unit.kind]}, not of {KIND_WORDS[kind]}."
    raise UnitError("unit-wrong-kind", written, wrong, f"Write {_choices(number, kind)}.")


_DIFFERENCE = "temperature_difference"

_BARE = {"ratio": "dimensionless", "count": "counted"}
"""Units that need not be written, by kind."""


def _may_stand_for(found: str, wanted: str) -> bool:
    """Let degrees count turns, and °C mean a difference where a difference is asked for."""
    return {found, wanted} == {"turns", "angle"} or (found, wanted) == ("temperature", _DIFFERENCE)


def _unit_left_out(number: str, written: str, kind: str | None) -> Unit:
    """Let a plain ratio or a count go without a unit, and nothing else."""
    if kind in _BARE:
        return BY_NAME[_BARE[kind]]
    mend = f"Write {_choices(number, kind)}."
    raise UnitError("unit-missing", written, "The unit is missing.", mend)


def _unknown(text: str, number: str, written: str, kind: str | None) -> UnitError:
    near = get_close_matches(_key(text), _SPELLINGS, n=1, cutoff=0.75)
    if near and (kind is None or _SPELLINGS[near[0]].kind == kind):
        mend = f"Write {number} {_typed(_SPELLINGS[near[0]])}, if that is meant."
    else:
        mend = f"Write {_choices(number, kind)}."
    shown = text if len(text) <= 40 else f"{text[:40]} ..."
    return UnitError("unit-unknown", written[:80], f'"{shown}" is not a unit known here.', mend)


def _no_number(written: str, plain: str, kind: str | None) -> UnitError:
    """Say why a text does not begin with a readable number."""
    if _COMMA.search(plain):
        return _comma(written, plain)
    wrong = (
        f'No number can be read at the start of "{written[:40]}".'
        if written
        else "Nothing is written."
    )
    return UnitError("not-a-number", written[:80], wrong, _ask(kind))


def _comma(written: str, plain: str) -> UnitError:
    """Ask back: a comma stands for a decimal point in one country and for thousands in another."""
    point = _COMMA.sub(".", plain)
    thousands = _THOUSANDS.sub("", plain)
    mend = f"Write {point}." if "," in thousands else f"Write {thousands} or {point}."
    return UnitError("not-a-number", written, "A comma in a number can mean two things.", mend)


def _no_span(written: str, plain: str, kind: str | None) -> UnitError:
    """Say why a text is not "a to b unit"."""
    if _COMMA.search(plain):
        return _comma(written, plain)
    example = f"2 to 4 {_typed(_usual(kind))}".rstrip()
    mend = f'Write two numbers with "to" between them, e.g. {example}.'
    return UnitError("not-a-number", written[:80], "This is not a range with two ends.", mend)


def _ask(kind: str | None) -> str:
    """Ask for a number, with an example of the kind."""
    unit = _typed(_usual(kind))
    return f"Write a number and its unit, e.g. 2 {unit}." if unit else "Write a number, e.g. 2."


def _choices(number: str, kind: str | None) -> str:
    """Offer the number with up to three units to choose from."""
    if kind == "ratio":
        return f"{number} or {number} %"
    symbols = [_typed(u) for u in units_of(kind)][:3] if kind else ["lbf·ft", "L", "km/h"]
    *most, last = (f"{number} {symbol}".rstrip() for symbol in symbols)
    return f"{', '.join(most)} or {last}" if most else last


def _usual(kind: str | None) -> Unit:
    """Choose the unit for an example."""
    if kind == "ratio":
        return BY_NAME["dimensionless"]
    return next(units_of(kind)) if kind else BY_NAME["pound_force_foot"]


def _typed(unit: Unit) -> str:
    return "turns" if unit.name == "turn" else unit.symbol


def _spellings() -> dict[str, Unit]:
    """Map every spelling to its unit; a spelling of two units is a mistake in the table."""
    table: dict[str, Unit] = {}
    for unit in UNITS:
        for spelling in (unit.symbol, unit.one, unit.many, unit.name, *unit.aliases):
            key = _key(spelling)
            if key and table.setdefault(key, unit) is not unit:
                msg = f"{spelling!r} names both {table[key].name} and {unit.name}"
                raise ValueError(msg)
    return table


_SPELLINGS = _spellings()
