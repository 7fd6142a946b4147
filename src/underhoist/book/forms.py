"""A calculator on paper: what it asks, to be filled in by hand below its worked example."""

from collections.abc import Iterator
from itertools import groupby

from attrs import frozen
from underhoist_calculators.declare import Calculator, Field
from underhoist_calculators.quantity_text import unit_named

_FEW = 4
"""So many units or words are named; the rest stand on the site's calculator."""


@frozen
class Row:
    """One entry: what it is called, in what it is written, and what the example has there."""

    name: str
    written: str
    """Units, or the words to choose from."""
    example: str


@frozen
class Part:
    """The entries under one heading."""

    heading: str
    rows: tuple[Row, ...]


def form_parts(calculator: Calculator) -> Iterator[Part]:
    """Yield the form's entries by their headings, in its order."""
    for heading, fields in groupby(calculator.fields, key=lambda each: each.group):
        yield Part(heading, tuple(map(_row, fields)))


def _row(field: Field) -> Row:
    labels = {each.name: each.label for each in field.choices}
    filled = field.example or field.default or ""
    of_row = f"{field.row}: {field.label[0].lower()}{field.label[1:]}"
    return Row(
        name=of_row if field.row else field.label,
        written=_written([*labels.values()] or [*map(_symbol, field.units)]),
        example=labels.get(filled, filled),
    )


def _written(ways: list[str]) -> str:
    return "; ".join(ways[:_FEW]) + ("; …" if len(ways) > _FEW else "")


def _symbol(name: str) -> str:
    unit = unit_named(name)
    return unit.symbol if unit else name
