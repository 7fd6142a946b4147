"""Reads one scalar as the value its type wants: text, number, choice, quantity, range, unit."""

# ruff: noqa: ANN401  (types are the values here)

import re
from collections.abc import Callable
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

from underhoist.model.values import Bounds, Measure, Pattern, Share, UnitOf
from underhoist.place import Placed
from underhoist.source.faults import Faults, fault
from underhoist.source.nodes import Listed, Node, Scalar, written
from underhoist.words import listing, meant

type Read = Callable[[Scalar], Any]


def placed_reader(value_type: Any) -> Callable[[Node, Any], Placed[Any]]:
    """Make the reader for `Placed[value_type]`; it raises Faults for any other text."""
    read = _reader(value_type)

    def read_placed(node: Node, _: Any) -> Placed[Any]:
        scalar = _scalar(node)
        return Placed(read(scalar), scalar.at, scalar.text)

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
            return lambda scalar: _patterned(scalar, mark)
        case UnitOf():
            return lambda scalar: _unit(scalar, mark)
        case Share():
            return _share
        case _:
            raise TypeError(f"no reader for {mark}")


def _scalar(node: Node) -> Scalar:
    """Return the node as one text. Raises Faults where it is a list, a set of keys or empty."""
    if not isinstance(node, Scalar):
        what = "a list" if isinstance(node, Listed) else "a set of keys"
        wrong = f"{node.key} wants one value here, not {what}."
        mend = "Write one value, in quotes if it begins with a bracket or a brace."
        raise Faults(fault("wrong-value", node.at, written(node), wrong, mend))
    if not node.text.strip():
        mend = "Write its value, or take the line out."
        raise Faults(
            fault("wrong-value", node.at, "", f"Nothing is written after {node.key}.", mend)
        )
    return node


def _choice(scalar: Scalar, choices: tuple[str, ...]) -> str:
    if scalar.text in choices:
        return scalar.text
    wrong = f"{scalar.key} is {listing(choices, 'or')}."
    mend = meant(scalar.text, choices, f"Write {listing(choices, 'or')}.")
    raise Faults(fault("wrong-value", scalar.at, scalar.text, wrong, mend))


def _number(scalar: Scalar, base: type, bounds: Bounds) -> float:
    whole = base is int
    form, example = (r"[+-]?\d{1,15}", "25") if whole else (r"[+-]?\d{1,15}(\.\d{1,15})?", "2.92")
    if not re.fullmatch(form, scalar.text, re.ASCII):
        wrong = f"{scalar.key} is a {'whole number' if whole else 'number'}."
        mend = f"Write digits only, such as {example}."
        raise Faults(fault("wrong-value", scalar.at, scalar.text, wrong, mend))
    value = base(scalar.text)
    if not bounds.least <= value <= bounds.most:
        most = f" and at most {bounds.most:g}" if isfinite(bounds.most) else ""
        wrong = f"{scalar.key} is at least {bounds.least:g}{most}."
        mend = f"Write a number in that range, such as {example}."
        raise Faults(fault("impossible-range", scalar.at, scalar.text, wrong, mend))
    return value


def _patterned(scalar: Scalar, pattern: Pattern) -> str:
    if re.fullmatch(pattern.regex, scalar.text):
        return scalar.text
    wrong = f"{scalar.key} is written with {pattern.wanted}."
    if "," in scalar.text:
        mend = f"Write several as a list in brackets: {scalar.key}: [{scalar.text}]."
    else:
        slug = "-".join(re.findall(r"[a-z0-9]+", scalar.text.lower()))
        fits = re.fullmatch(pattern.regex, slug)
        mend = f"Write {slug}." if fits else "Write it in that form."
    raise Faults(fault("wrong-value", scalar.at, scalar.text, wrong, mend))


def _unit(scalar: Scalar, wanted: UnitOf) -> str:
    unit = unit_named(scalar.text)
    known = [each.symbol for each in units_of(wanted.kind)] if wanted.kind else []
    if unit is None:
        mend = (
            f"Write {listing(known, 'or')}."
            if known
            else "Write a unit such as turn, inHg or km/h."
        )
        raise Faults(
            fault(
                "unit-unknown",
                scalar.at,
                scalar.text,
                f'"{scalar.text}" is not a unit known here.',
                mend,
            )
        )
    if wanted.kind and unit.kind != wanted.kind:
        wrong = f"{scalar.key} is a unit of {wanted.kind}; {unit.symbol} is not."
        mend = f"Write {listing(known, 'or')}."
        raise Faults(fault("unit-wrong-kind", scalar.at, scalar.text, wrong, mend))
    return scalar.text


def _share(scalar: Scalar) -> float:
    form = re.fullmatch(r"([+-]?\d{1,9}(?:\.\d{1,9})?)\s*%", scalar.text, re.ASCII)
    if form is None:
        code = "unit-missing" if re.fullmatch(r"[+-]?[\d.]+", scalar.text) else "wrong-value"
        wrong = f"{scalar.key} is a percentage."
        raise Faults(
            fault(code, scalar.at, scalar.text, wrong, "Write a number and %, such as 40 %.")
        )
    share = float(form[1]) / 100
    if not 0 <= share <= 1:
        wrong = f"{scalar.key} lies between 0 % and 100 %."
        raise Faults(
            fault(
                "impossible-range",
                scalar.at,
                scalar.text,
                wrong,
                "Write a share of all cases, such as 40 %.",
            )
        )
    return share


def _measured(
    scalar: Scalar, read: Callable[[str, str | None], Quantity | Span], measure: Measure
) -> Quantity | Span:
    try:
        value = read(scalar.text, measure.kind)
    except UnitError as error:
        code = "wrong-value" if error.code == "not-a-number" else error.code
        mend = error.mend
        if measure.kind is None and error.wrong.startswith("This is not a range"):
            mend = 'Write two numbers with "to" between them and their unit, such as 1 to 2 turns.'
        raise Faults(fault(code, scalar.at, scalar.text, error.wrong, mend)) from None
    least = (value.low if isinstance(value, Span) else value).magnitude
    if measure.sign == "above zero" and least <= 0:
        wrong = f"{scalar.key} is above zero."
        raise Faults(
            fault(
                "impossible-range", scalar.at, scalar.text, wrong, "Write the value that is meant."
            )
        )
    if measure.sign == "not below zero" and least < 0:
        wrong = f"{scalar.key} is not below zero."
        raise Faults(
            fault(
                "impossible-range",
                scalar.at,
                scalar.text,
                wrong,
                "Write it without the minus sign.",
            )
        )
    return value
