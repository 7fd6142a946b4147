"""How one value became another: "9 -> 10 lbf·ft"; many times as much is pointed out."""

from functools import lru_cache

from underhoist_calculators.units import (
    Quantity,
    Span,
    UnitError,
    kind_of,
    number_text,
    read_quantity,
    read_span,
    same_dimension,
    unit_name,
)

from underhoist.history.change import Rank
from underhoist.history.saying import now_and_was

MANY_TIMES = 2
"""A value so many times as large or as small is pointed out: a slip of the unit is twelve times."""

LONG = 48
"""Characters of a text that is quoted instead of set beside an arrow."""

_RANKS = {"torque": Rank.TORQUE, "volume": Rank.CAPACITY}


def became(old: str, new: str) -> str:
    """Say how one text became another."""
    before, after = amount(old), amount(new)
    if isinstance(before, Quantity) and isinstance(after, Quantity):
        return _quantity(old, new, before, after)
    if max(len(old), len(new)) > LONG:
        return f"now {now_and_was(old, new)}"
    return f"{old} -> {new}"


def rank(*texts: str) -> Rank:
    """Say whether any of the texts is a torque or a capacity."""
    return min(map(_rank, texts), default=Rank.OTHER)


@lru_cache(maxsize=65_536)
def amount(text: str) -> Quantity | Span | None:
    """Read a quantity or a range, None for any other text."""
    if len(text) > LONG or not any(map(str.isdigit, text)):
        return None
    for read in (read_quantity, read_span):
        try:
            return read(text)
        except UnitError:
            continue
    return None


def _rank(text: str) -> Rank:
    value = amount(text)
    if not isinstance(value, Quantity):
        return Rank.OTHER
    return _RANKS.get(kind_of(value), Rank.OTHER)


def _quantity(old: str, new: str, before: Quantity, after: Quantity) -> str:
    number, _, unit = old.rpartition(" ")
    same_unit = number and unit == new.rpartition(" ")[2]
    words = f"{number if same_unit else old} -> {new}"
    note = _times(before, after, same_unit=unit_name(before) == unit_name(after))
    return f"{words}, {note}" if note else words


def _times(before: Quantity, after: Quantity, *, same_unit: bool) -> str:
    """Point out a value that became many times as much, or the same in another unit."""
    if not same_dimension(before, unit_name(after)) or kind_of(before) == "temperature":
        return ""
    was, now = before.m_as(unit_name(after)), after.magnitude
    if was <= 0 or now <= 0:
        return ""
    times = now / was
    if times >= MANY_TIMES:
        return f"{_number(times)} times as much"
    if times <= 1 / MANY_TIMES:
        return f"1/{_number(1 / times)} of what it was"
    if not same_unit and abs(times - 1) < 0.005:
        return "the same in another unit"
    return ""


def _number(value: float) -> str:
    return number_text(value, figures=2 if value < 100 else 3)  # 12, 2.5, 144
