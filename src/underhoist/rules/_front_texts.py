"""What the front matter of a page says in words: titles, names, notes, not ids and standards."""

from collections.abc import Iterator, Mapping
from functools import cache
from typing import cast

from attrs import AttrsInstance, fields, has

from underhoist.model import Page
from underhoist.place import Placed

_NOT_OURS = frozenset(
    {"complaint", "author", "specification", "accepts", "never_with", "fluids", "thread", "tyre",
     "words", "areas", "area", "unit", "body"}
)  # fmt: skip
"""Keys whose words are the owner's, a standard's, or compared with other words."""


def front_texts(page: Page) -> Iterator[Placed[str]]:
    """Return each text of the page's front matter that the shop itself says."""
    return _in_class(page)


def _in_class(thing: AttrsInstance) -> Iterator[Placed[str]]:
    for name in _of_ours(type(thing)):
        yield from _in_value(getattr(thing, name))


@cache
def _of_ours(kind: type[AttrsInstance]) -> tuple[str, ...]:
    """Name the keys of a class that can hold words of the shop's own."""
    return tuple(
        each.name
        for each in fields(kind)
        if each.name not in _NOT_OURS and "to" not in each.metadata
    )


def _in_value(value: object) -> Iterator[Placed[str]]:
    match value:
        case Placed(value=str()):
            yield value
        case Placed() | str() | None:
            return
        case Mapping():
            for each in cast("Mapping[str, object]", value).values():
                yield from _in_value(each)
        case tuple():
            for each in cast("tuple[object, ...]", value):
                yield from _in_value(each)
        case _ if has(type(value)):
            yield from _in_class(cast("AttrsInstance", value))
        case _:
            return
