"""The ids that a page's front matter names, found by the model's own marks."""

from collections.abc import Iterator, Mapping
from functools import cache
from typing import Any, cast

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
        value = getattr(thing, name)
        if to is not None:
            yield from ((to, cast("Placed[str]", placed)) for placed in _each(value))
        else:
            for each in _each(value):
                if has(each.__class__):
                    yield from _within(each)


@cache
def _marked_fields(kind: type) -> tuple[tuple[str, str | None], ...]:
    """Fields that refer to something, with what to; and fields that may hold such a field."""
    every: Any = fields(cast("Any", kind)) if kind is not Placed else ()
    return tuple((each.name, each.metadata.get("to")) for each in every if each.name != "body")


def _each(value: object) -> Iterator[object]:
    """Yield the single values: of a list, of a set of names, or the value itself."""
    if isinstance(value, tuple):
        yield from cast("tuple[Any, ...]", value)
    elif isinstance(value, Mapping):
        yield from cast("Mapping[str, Any]", value).values()
    elif value is not None:
        yield value
