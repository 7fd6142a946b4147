"""Turns what was typed into values, or says beside each field what is wrong with it."""

from collections.abc import Mapping
from difflib import get_close_matches
from functools import cache

from attrs import frozen

from underhoist_calculators.declare import Calculator, Field
from underhoist_calculators.inputs import Inputs, Value
from underhoist_calculators.tyre import read_tyre
from underhoist_calculators.units import (
    Quantity,
    Span,
    UnitError,
    read_quantity,
    read_span,
    show,
    unit_named,
    units_of,
)

LONGEST_NAME = 200
"""Characters that a name, or a list of names, may have."""


@frozen
class Wrong:
    """What was written in a field, what is wrong with it and how to mend it."""

    written: str
    wrong: str
    mend: str


Errors = dict[str, Wrong]


def read_entries(calculator: Calculator, entries: Mapping[str, str]) -> tuple[Inputs, Errors]:
    """Read every entry; `<field>.unit` is the unit chosen for a text that names none."""
    values: dict[str, Value] = {}
    errors = _unknown_names(calculator, entries)
    for field in calculator.fields:
        try:
            value = _read(field, entries)
        except UnitError as error:
            errors[field.name] = Wrong(error.written, error.wrong, error.mend)
            continue
        if value is not None:
            values[field.name] = value
        elif field.required:
            errors[field.name] = Wrong("", "Nothing is written.", f"Write {example(field)}.")
    return Inputs(values), errors


def example(field: Field) -> str:
    """Write a good entry for the field, as its help would."""
    if field.choices:
        return " or ".join(choice.name for choice in field.choices)
    return field.example or field.default or field.low or "a value"


def text_of(field: Field, entries: Mapping[str, str]) -> str:
    """Give what was typed with its chosen unit, or the field's default."""
    typed = entries.get(field.name, "").strip()
    if not typed:
        return field.default or "" if field.name not in entries else ""
    unit = entries.get(f"{field.name}.unit", "").strip()
    return f"{typed} {unit}" if unit and _lacks_unit(typed) else typed


def _lacks_unit(typed: str) -> bool:
    """Say whether the text is only a number or two: a unit inside the text wins."""
    return not any(c.isalpha() or c in "%°\"'" for c in typed.replace(" to ", " "))


def _read(field: Field, entries: Mapping[str, str]) -> Value | None:
    """Read one field; raises `UnitError`."""
    text = text_of(field, entries)
    if not text:
        return None
    if field.choices:
        return _choice(field, text)
    if text.casefold() in field.words:
        return text.casefold()
    if field.kind in {"text", "tyre"}:
        return read_tyre(text) if field.kind == "tyre" else _name(field, text)
    chosen = entries.get(f"{field.name}.unit", "").strip()
    if chosen and unit_named(chosen) is None:
        wrong = f'"{chosen}" is not a unit known here.'
        raise UnitError("unit-unknown", text, wrong, f"Write {example(field)}.")
    if field.span:
        span = read_span(text, field.kind)
        return Span(_in_range(field, span.low, text), _in_range(field, span.high, text))
    return _in_range(field, read_quantity(text, field.kind), text)


def _choice(field: Field, text: str) -> str:
    for choice in field.choices:
        if text.casefold() in (choice.name.casefold(), choice.label.casefold()):
            return choice.name
    wrong = f'"{text[:40]}" is not one of the choices.'
    raise UnitError("not-a-number", text, wrong, f"Write {example(field)}.")


def _name(field: Field, text: str) -> str:
    """Give a name with single spaces; raises `UnitError` for what cannot be one."""
    name = " ".join(text.split())
    if not any(map(str.isalnum, name)):
        wrong = f'"{name[:40]}" is not a name.'
        raise UnitError("not-a-number", text, wrong, f"Write {example(field)}.")
    if len(name) > LONGEST_NAME:
        wrong = "This is too long for a name."
        mend = f"Write at most {LONGEST_NAME} characters, e.g. {example(field)}."
        raise UnitError("impossible-range", text, wrong, mend)
    return name


def _in_range(field: Field, value: Quantity, text: str) -> Quantity:
    """Give the value back; raises `UnitError` outside the field's range."""
    number = _number(value, field.kind)
    below = field.low is not None and number < _bound(field.low, field.kind)
    if not below and (field.high is None or number <= _bound(field.high, field.kind)):
        return value
    wrong = f"{show(value)} is {'below' if below else 'above'} what this entry can be."
    if field.low is not None and field.high is not None:
        mend = f"Write a value from {field.low} to {field.high}."
    else:
        mend = f"Write {example(field)}."
    raise UnitError("impossible-range", text, wrong, mend)


@cache
def _bound(text: str, kind: str) -> float:
    return _number(read_quantity(text, kind), kind)


def _number(value: Quantity, kind: str) -> float:
    """Give the number in one unit of the kind, upwards: marks below full count down."""
    return value.m_as("mark_above_full" if kind == "level" else next(units_of(kind)).name)


def _unknown_names(calculator: Calculator, entries: Mapping[str, str]) -> Errors:
    """Name the entries that belong to no field, each with the nearest field."""
    names = [field.name for field in calculator.fields]
    errors: Errors = {}
    for name, text in entries.items():
        if name.removesuffix(".unit") not in names:
            near = get_close_matches(name, names, n=1, cutoff=0.5)
            mend = f"Use {near[0]}." if near else f"Use {', '.join(names[:4])}."
            errors[name] = Wrong(text, f"{calculator.name} has no entry {name}.", mend)
    return errors


def example_entries(calculator: Calculator) -> dict[str, str]:
    """Give the entries of a calculator's worked example: its examples and defaults."""
    filled = ((field.name, field.example or field.default) for field in calculator.fields)
    return {name: entry for name, entry in filled if entry}


def split_unit(field: Field, typed: str) -> tuple[str, str]:
    """Split a text into its number and the registry name of one of the field's units.

    A text that cannot be split so is given back whole, with the field's usual unit.
    """
    usual = field.units[0] if field.units else ""
    for cut in range(len(typed), 0, -1):
        number, unit = typed[:cut].rstrip(), unit_named(typed[cut:].strip())
        if unit and unit.name in field.units and number[-1:].isdigit() and _lacks_unit(number):
            return number, unit.name
    return typed, usual
