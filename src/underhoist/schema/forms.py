"""How each kind of value is written: in words, as a pattern, and by example."""

# ruff: noqa: ANN401  (types are the values here)

from math import isfinite
from typing import Annotated, Any, Literal, get_args, get_origin

from attrs import frozen
from underhoist_calculators import all_calculators
from underhoist_calculators.units import KIND_WORDS, Span, units_of

from underhoist.model.values import HOW_OFTEN, Bounds, Frequency, Measure, Pattern, Share, UnitOf
from underhoist.words import listing

_NUMBER = "[0-9\u00bc-\u00be\u2150-\u215e]"
_UNIT = r"[^0-9\s.,/+-]"
QUANTITY = rf"^.*{_NUMBER}.*{_UNIT}.*$"
"""A number and something after it that can be a unit; which units there are, the check knows."""
SPAN = rf"^.*{_NUMBER}.*(?:to|[-\u2013\u2014]).*{_NUMBER}.*{_UNIT}.*$"
SHARE = r"^\s*[+-]?[0-9]+(?:\.[0-9]+)?\s*%\s*$"

EXAMPLES: dict[str | None, tuple[str, str]] = {
    "torque": ("9 lbf*ft", "30 to 150 lbf*in"),
    "volume": ("4.2 L", "4 to 4.5 L"),
    "turns": ("1 1/2 turns", "1 to 2 turns"),
    "speed": ("40 km/h", "16 to 22 km/h"),
    "pressure": ("17 inHg", "15 to 20 inHg"),
    "length": ("52.1 mm", "52.0 to 52.2 mm"),
    "temperature": ("80 degC", "65 to 80 degC"),
    "rotation_speed": ("1800 r/min", "1700 to 1900 r/min"),
    None: ("0.5 mm", "15 to 20 inHg"),
}
"""A quantity and a range by kind; None is for a value that may be of any kind."""


@frozen
class Form:
    """How a value is written. `number` is for one that YAML itself takes for a number."""

    words: str
    example: str = ""
    pattern: str = ""
    choices: tuple[str, ...] = ()
    suggestions: tuple[str, ...] = ()
    """Some of the many texts that will do."""
    number: Bounds | None = None
    whole: bool = False


def form_of(kind: Any) -> Form:
    """Describe a value type of the model. Raises TypeError for one that has no mark known here."""
    if get_origin(kind) is Literal:
        choices = get_args(kind)
        return Form(listing(choices, "or"), example=choices[0], choices=choices)
    if kind is str:
        return Form("text")
    if get_origin(kind) is Annotated:
        return _marked(*get_args(kind))
    raise TypeError(f"no form for {kind}")


def _marked(base: type, mark: object) -> Form:
    match mark:
        case Measure():
            return _measured(mark, is_span=base is Span)
        case Bounds():
            return _number(mark, whole=base is int)
        case Pattern():
            offered = _offered(mark)
            return Form(mark.wanted, pattern=f"^(?:{mark.regex})$", suggestions=offered)
        case UnitOf():
            return _unit(mark)
        case Share():
            return Form("a percentage", example="40 %", pattern=SHARE)
        case Frequency():
            words = f"{', '.join(HOW_OFTEN)}, or a percentage"
            pattern = f"^(?:{'|'.join(HOW_OFTEN)})$|{SHARE}"
            return Form(words, example="mostly", pattern=pattern)
        case _:
            raise TypeError(f"no form for {mark}")


def _offered(mark: Pattern) -> tuple[str, ...]:
    """Return what there is to choose from whatever the manual says."""
    judging = [each for each in all_calculators() if each.patterns] if mark.offers else []
    if mark.offers == "calculators":
        return tuple(each.name for each in judging)
    if mark.offers == "answers":
        return tuple(dict.fromkeys(word for each in judging for word in each.patterns))
    return ()


def _measured(mark: Measure, *, is_span: bool) -> Form:
    example = _examples(mark.kind)[is_span]
    of = f" of {KIND_WORDS[mark.kind]}" if mark.kind else ""
    if is_span:
        return Form(f"two numbers and their unit{of}", example=example, pattern=SPAN)
    return Form(f"a number and its unit{of}", example=example, pattern=QUANTITY)


def _examples(kind: str | None) -> tuple[str, str]:
    """Return usual figures of this kind, or any with its first unit."""
    if kind in EXAMPLES:
        return EXAMPLES[kind]
    symbol = next(iter(units_of(kind or ""))).symbol
    return f"1 {symbol}", f"1 to 2 {symbol}"


def _number(bounds: Bounds, *, whole: bool) -> Form:
    words = f"a {'whole ' if whole else ''}number, at least {bounds.least:g}"
    words += f" and at most {bounds.most:g}" if isfinite(bounds.most) else ""
    return Form(words, example="25" if whole else "2.92", number=bounds, whole=whole)


def _unit(mark: UnitOf) -> Form:
    if mark.kind is None:
        return Form("a unit", example="mm", suggestions=("mm", "turn", "inHg", "km/h", "L"))
    symbols = tuple(unit.symbol for unit in units_of(mark.kind))
    return Form(f"a unit of {KIND_WORDS[mark.kind]}", example=symbols[0], suggestions=symbols)
