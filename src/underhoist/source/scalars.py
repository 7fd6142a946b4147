"""Reads one scalar as the value its type wants: text, number, choice, quantity, range, unit."""

# ruff: noqa: ANN401  (types are the values here)

import re
from collections.abc import Callable
from functools import lru_cache
from math import isfinite
from typing import Annotated, Any, Literal, get_args, get_origin

from underhoist_calculators.units import (
    Quantity,
    Span,
    UnitError,
    read_quantity,
    read_span,
    unit_named,
    units_of,
)

from underhoist.finding import Edit
from underhoist.model.values import HOW_OFTEN, Bounds, Frequency, Measure, Pattern, Share, UnitOf
from underhoist.place import Placed
from underhoist.source.faults import Faults, fault
from underhoist.source.nodes import Listed, Node, Scalar, written
from underhoist.source.retyped import in_place_of, quoted, retyped
from underhoist.words import NOT_WRITTEN, listing, meant, quote, sure

type Read = Callable[[Scalar], Any]

_THOUSANDS = re.compile(r"\d,\d{3}(?!\d)")
"""A comma that may as well part thousands."""

_CURLY = re.compile("[“”„‘’‚«»](.*)[“”‘’«»]")
"""A text between quotes of print, which YAML takes for part of the text."""


def placed_reader(value_type: Any) -> Callable[[Node, Any], Placed[Any]]:
    """Make the reader for `Placed[value_type]`; it raises Faults for any other text."""
    read = _reader(value_type)

    def read_placed(node: Node, _: Any) -> Placed[Any]:
        scalar = _scalar(node)
        return Placed(read(scalar), scalar.at, scalar.text, scalar.until > 0)

    return read_placed


def _reader(value_type: Any) -> Read:
    if get_origin(value_type) is Literal:
        choices = get_args(value_type)
        return lambda scalar: _choice(scalar, choices)
    if get_origin(value_type) is Annotated:
        base, mark = get_args(value_type)
        return _marked(base, mark)
    if value_type is str:
        return lambda scalar: scalar.text
    raise TypeError(f"no reader for {value_type}")


def _marked(base: type, mark: object) -> Read:
    """Make the reader for a type with one of the marks of `underhoist.model.values`."""
    match mark:
        case Measure():
            read = read_span if base is Span else read_quantity
            return lambda scalar: _measured(scalar, read, mark)
        case Bounds():
            return lambda scalar: _number(scalar, base, mark)
        case Pattern():
            form = re.compile(mark.regex)
            return lambda scalar: _patterned(scalar, form, mark.wanted)
        case UnitOf():
            return lambda scalar: _unit(scalar, mark)
        case Share():
            return _share
        case Frequency():
            return _frequency
        case _:
            raise TypeError(f"no reader for {mark}")


def _refused(code: str, node: Node, wrong: str, mend: str, edit: Edit | None = None) -> Faults:
    return Faults(fault(code, node.at, written(node), wrong, mend, edit))


def _scalar(node: Node) -> Scalar:
    """Return the node as one text. Raises Faults where it is a list, a set of keys or empty."""
    if not isinstance(node, Scalar):
        what = "a list" if isinstance(node, Listed) else "a set of keys"
        wrong = f"{node.key} wants one value here, not {what}."
        mend = "Write one value, in quotes if it begins with a bracket or a brace."
        raise _refused("wrong-value", node, wrong, mend)
    if not node.text.strip():
        wrong = f"Nothing is written after {node.key}."
        raise _refused("wrong-value", node, wrong, "Write its value, or take the line out.")
    if node.until and (curly := _CURLY.fullmatch(node.text)):
        raise _curly_quotes(node, curly[1].strip())
    if NOT_WRITTEN in node.text:
        wrong = f"{node.key} is not written yet."
        raise _refused("not-written-yet", node, wrong, f"Write it in place of {NOT_WRITTEN}.")
    return node


def _curly_quotes(scalar: Scalar, text: str) -> Faults:
    wrong = "Curly quotes round a value are taken for a part of it."
    mend = 'Write straight quotes ", or none.'
    straight = quoted(text)
    edit = retyped(scalar, text) or (in_place_of(scalar, straight) if straight else None)
    return _refused("wrong-value", scalar, wrong, mend, edit)


def _choice(scalar: Scalar, choices: tuple[str, ...]) -> str:
    if scalar.text in choices:
        return scalar.text
    wrong = f"{scalar.key} is {listing(choices, 'or')}."
    mend = meant(scalar.text, choices, f"Write {listing(choices, 'or')}.")
    near = sure(scalar.text, choices)
    raise _refused("wrong-value", scalar, wrong, mend, retyped(scalar, near) if near else None)


def _number(scalar: Scalar, base: type, bounds: Bounds) -> float:
    whole = base is int
    form, example = (r"[+-]?\d{1,15}", "25") if whole else (r"[+-]?\d{1,15}(\.\d{1,15})?", "2.92")
    if not re.fullmatch(form, scalar.text, re.ASCII):
        if not whole and re.fullmatch(r"[+-]?\d{1,15},\d{1,15}", scalar.text, re.ASCII):
            raise _decimal_comma(scalar)
        wrong = f"{scalar.key} is a {'whole number' if whole else 'number'}."
        raise _refused("wrong-value", scalar, wrong, f"Write digits only, such as {example}.")
    value = base(scalar.text)
    if not bounds.least <= value <= bounds.most:
        most = f" and at most {bounds.most:g}" if isfinite(bounds.most) else ""
        wrong = f"{scalar.key} is at least {bounds.least:g}{most}."
        mend = f"Write a number in that range, such as {example}."
        raise _refused("impossible-range", scalar, wrong, mend)
    return value


def _decimal_comma(scalar: Scalar) -> Faults:
    point = scalar.text.replace(",", ".")
    wrong = "A comma in a number can mean two things."
    edit = None if _THOUSANDS.search(scalar.text) else retyped(scalar, point)
    return _refused("wrong-value", scalar, wrong, f"Write {point}, if that is meant.", edit)


def _patterned(scalar: Scalar, form: re.Pattern[str], wanted: str) -> str:
    if form.fullmatch(scalar.text):
        return scalar.text
    several = [each.strip() for each in re.split("[;,]", scalar.text)]
    if len(several) > 1:
        raise _several(scalar, several, all(map(form.fullmatch, several)))
    wrong = f"{scalar.key} is written with {wanted}."
    slug = "-".join(re.findall(r"[a-z0-9]+", scalar.text.lower()))
    if not form.fullmatch(slug):
        raise _refused("wrong-value", scalar, wrong, "Write it in that form.")
    sounds_same = re.fullmatch(r"[\w -]+", scalar.text, re.ASCII)
    edit = retyped(scalar, slug) if sounds_same else None
    raise _refused("wrong-value", scalar, wrong, f"Write {slug}.", edit)


def _several(scalar: Scalar, several: list[str], whole: bool) -> Faults:
    """Refuse several values written as one: parted by semicolons, or by commas without brackets."""
    listed = ", ".join(several)
    wrong = f"{scalar.key} holds several values here that are written as one."
    if scalar.within == "[":
        mend, source = f"Part them by commas: {listed}.", listed
    elif scalar.within == ":":
        mend, source = f"Write them as a list in brackets: [{listed}].", f"[{listed}]"
    else:
        mend, source = "Write each on its own.", ""
    edit = in_place_of(scalar, source) if whole and source else None
    return _refused("wrong-value", scalar, wrong, mend, edit)


def _unit(scalar: Scalar, wanted: UnitOf) -> str:
    unit = unit_named(scalar.text)
    if unit is not None and wanted.kind in {None, unit.kind}:
        return scalar.text
    mend = "Write a unit such as turn, inHg or km/h."
    if wanted.kind:
        mend = f"Write {listing((each.symbol for each in units_of(wanted.kind)), 'or')}."
    if unit is None:
        wrong = f'"{quote(scalar.text)}" is not a unit known here.'
        raise _refused("unit-unknown", scalar, wrong, mend)
    wrong = f"{scalar.key} is a unit of {wanted.kind}; {unit.symbol} is not."
    raise _refused("unit-wrong-kind", scalar, wrong, mend)


def _share(scalar: Scalar) -> float:
    form = re.fullmatch(r"([+-]?\d{1,9}(?:\.\d{1,9})?)\s*%", scalar.text, re.ASCII)
    if form is None:
        code = "unit-missing" if re.fullmatch(r"[+-]?[\d.]+", scalar.text) else "wrong-value"
        wrong = f"{scalar.key} is a percentage."
        raise _refused(code, scalar, wrong, "Write a number and %, such as 40 %.")
    share = float(form[1]) / 100
    if not 0 <= share <= 1:
        wrong = f"{scalar.key} lies between 0 % and 100 %."
        mend = "Write a share of all cases, such as 40 %."
        raise _refused("impossible-range", scalar, wrong, mend)
    return share


def _frequency(scalar: Scalar) -> float:
    """Read a word for how often, else a percentage."""
    if scalar.text in HOW_OFTEN:
        return HOW_OFTEN[scalar.text]
    if re.search(r"\d", scalar.text):
        return _share(scalar)
    near = sure(scalar.text, HOW_OFTEN)
    wrong = f"{scalar.key} is {listing(HOW_OFTEN, 'or')}, or a percentage."
    mend = meant(scalar.text, HOW_OFTEN, "Write one of these words, or a share such as 70 %.")
    raise _refused("wrong-value", scalar, wrong, mend, retyped(scalar, near) if near else None)


@lru_cache(maxsize=4096)
def _value(
    read: Callable[[str, str | None], Quantity | Span], text: str, kind: str | None
) -> Quantity | Span:
    """Read a quantity once for all the places where it is written alike."""
    return read(text, kind)


def _measured(
    scalar: Scalar, read: Callable[[str, str | None], Quantity | Span], measure: Measure
) -> Quantity | Span:
    try:
        value = _value(read, scalar.text, measure.kind)
    except UnitError as error:
        code = "wrong-value" if error.code == "not-a-number" else error.code
        mend = error.mend
        if measure.kind is None and error.wrong.startswith("This is not a range"):
            mend = 'Write two numbers with "to" between them and their unit, such as 1 to 2 turns.'
        edit = _unit_edit(scalar, error, read, measure.kind)
        raise _refused(code, scalar, error.wrong, mend, edit) from None
    _refuse_impossible(scalar, value.low if isinstance(value, Span) else value, measure)
    return value


def _unit_edit(
    scalar: Scalar, error: UnitError, read: Callable[[str, str | None], Any], kind: str | None
) -> Edit | None:
    """Make the mend that the error offers, if it is the only one and no other is thinkable.

    A decimal comma that cannot part thousands, and a unit whose letters are right and whose signs
    between are missing; a unit that only sounds like another is for the author.
    """
    offered = re.fullmatch(r"Write ([^,]+?)(?:, if that is meant)?\.", error.mend)
    if offered is None or " or " in offered[1]:
        return None
    text = offered[1]
    comma = error.code == "not-a-number" and text == scalar.text.replace(",", ".")
    letters = error.code == "unit-unknown" and _letters(text) == _letters(scalar.text)
    if not letters and (not comma or _THOUSANDS.search(scalar.text)):
        return None
    try:
        read(text, kind)
    except UnitError:
        return None
    return retyped(scalar, text)


def _letters(text: str) -> list[str]:
    return re.findall(r"[^\W_]", text.lower())


def _refuse_impossible(scalar: Scalar, least: Quantity, measure: Measure) -> None:
    """Raise Faults where the quantity lies below what its kind can be."""
    mend = "Write the value that is meant."
    if measure.lowest == "above zero" and least.magnitude <= 0:
        raise _refused("impossible-range", scalar, f"{scalar.key} is above zero.", mend)
    if measure.lowest == "zero" and least.magnitude < 0:
        raise _refused("impossible-range", scalar, f"{scalar.key} is not below zero.", mend)
    if measure.lowest == "absolute zero" and least.m_as("kelvin") < 0:
        wrong = f"{scalar.key} is not below absolute zero."
        raise _refused("impossible-range", scalar, wrong, mend)
