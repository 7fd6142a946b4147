"""Whole numbers out of what was typed: teeth, planets."""

from collections.abc import Iterator

from underhoist_calculators.inputs import EntryError, Inputs
from underhoist_calculators.units import Quantity, Span, number_text


def count(inputs: Inputs, name: str) -> int | None:
    """Give a whole number, or None where the field is empty; raises `EntryError` for a fraction."""
    found = inputs.maybe(name)
    return None if found is None else _whole(found, name)


def needed(inputs: Inputs, name: str) -> int:
    """Give a whole number; raises `EntryError` where the field is empty or holds a fraction."""
    return _whole(inputs.quantity(name), name)


def counts(span: Span, name: str) -> Iterator[int]:
    """Give every whole number of a range; raises `EntryError` where an end is a fraction."""
    return iter(range(_whole(span.low, name), _whole(span.high, name) + 1))


def _whole(value: Quantity, name: str) -> int:
    number = value.m_as("counted")
    if number != int(number):
        wrong = f"{number_text(number)} is not a whole number."
        mend = f"Write {int(number)} or {int(number) + 1}."
        raise EntryError(name, wrong, mend)
    return int(number)
