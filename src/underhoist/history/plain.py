"""The model's values as plain JSON texts, written as the pages write them."""

import re
from collections.abc import Iterator, Mapping
from typing import Any, cast

from attrs import AttrsInstance, fields, has
from underhoist_calculators.registry import Quantity, Span
from underhoist_calculators.units import show, show_number, unit_name

from underhoist.model import Page
from underhoist.place import Placed

type Plain = str | list[Plain] | dict[str, Plain]
"""What a record holds: texts, lists and names with what stands under them."""

_LONG_NUMBER = re.compile(r"(?:\d[.,]?){7,}")
"""More figures than `show` keeps: the text as written is then kept instead."""


_BESIDE = ("id", "file", "body")
"""What of a page is no front matter."""


def facts(page: Page) -> dict[str, Plain]:
    """Give a page's front matter, empty keys left out."""
    return {name: value for name, value in _entries(page) if name not in _BESIDE}


def plain(value: object, scheme: str = "") -> Plain:
    """Give any value of the model as plain texts; an id of something carries its scheme."""
    if isinstance(value, Placed):
        text = _text(cast("Placed[object]", value))
        return f"{scheme}:{text}" if scheme else text
    if isinstance(value, Mapping):
        named = cast("Mapping[str, object]", value)
        return {name: plain(each, scheme) for name, each in named.items()}
    if isinstance(value, tuple):
        return [plain(each, scheme) for each in cast("tuple[object, ...]", value)]
    if has(type(value)):
        return dict(_entries(cast("AttrsInstance", value)))
    return str(value)


def _entries(thing: AttrsInstance) -> Iterator[tuple[str, Plain]]:
    for each in fields(type(thing)):
        value: Any = getattr(thing, each.name)
        if value is None or value in ((), {}):
            continue
        made = plain(value, each.metadata.get("to", ""))
        if made:
            yield each.name, made


def _text(placed: Placed[object]) -> str:
    """Write a quantity as pages do, so that "9 ft-lb" and "9 lbf·ft" are one; all else as it is."""
    value = placed.value
    if isinstance(value, Quantity | Span) and _LONG_NUMBER.search(placed.written):
        return " ".join(placed.written.split())
    if isinstance(value, Quantity):
        return show(value)
    if isinstance(value, Span):
        if unit_name(value.low) == unit_name(value.high):
            return f"{show_number(value.low)} to {show(value.high)}"
        return f"{show(value.low)} to {show(value.high)}"
    return value if isinstance(value, str) else placed.written
