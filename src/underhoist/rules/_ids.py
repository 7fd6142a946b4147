"""The ids that a page's front matter names, found by the model's own marks."""

from collections.abc import Iterator, Mapping
from functools import cache
from typing import Any, cast, get_args

from attrs import fields, has

from underhoist.model import Page
from underhoist.place import Placed

type Named = tuple[str, Placed[str]]
"""What an id refers to (tool, torque, cause …) and the id."""


def ids_of(page: Page) -> Iterator[Named]:
    """Every id in the page's front matter that refers to something else."""
    return _within(page)


def _within(thing: object) -> Iterator[Named]:
    for name, to in _marked_fields(cast("type", type(thing))):
        for each in _each(getattr(thing, name)):
            if to is not None:
                yield to, cast("Placed[str]", each)
            else:
                yield from _within(each)


@cache
def _marked_fields(kind: type) -> tuple[tuple[str, str | None], ...]:
    """Fields that refer to something, with what to; and fields that hold a thing with such."""
    every: Any = fields(cast("Any", kind))
    marks = ((each.name, each.metadata.get("to"), each.type) for each in every)
    return tuple(
        (name, to) for name, to, type_ in marks if to or any(map(_marked_fields, _classes(type_)))
    )


def _classes(type_: object) -> Iterator[type]:
    """Yield the classes of ours that values of this type are made of."""
    if isinstance(type_, type) and has(type_):
        yield type_
    for part in get_args(type_):
        yield from _classes(part)


def _each(value: object) -> Iterator[object]:
    """Yield the single values: of a list, of a set of names, or the value itself."""
    if isinstance(value, tuple):
        yield from cast("tuple[Any, ...]", value)
    elif isinstance(value, Mapping):
        yield from cast("Mapping[str, Any]", value).values()
    elif value is not None:
        yield value
