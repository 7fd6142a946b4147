"""What a new page begins with: the keys that its kind must have, empty, and the frame of a text."""

from collections import Counter
from collections.abc import Iterator
from posixpath import dirname

from attrs import NOTHING, fields, frozen

from underhoist.model import Manual, Page
from underhoist.source.read import KINDS
from underhoist.source.structure import GIVEN


@frozen
class Blank:
    """A new page of one kind."""

    kind: str
    title: str
    """The kind as a person says it."""
    folder: str
    """Where most pages of the kind are; "" is the manual's own folder."""
    text: str


_TITLES = {"unit-family": "Unit family", "page": "Plain page"}
_FOLDERS = {"unit-family": "families", "fault": "faults", "tool": "tools", "hazard": "hazards"}

_STEPS = """
## Steps

1. 

    Why: 

    Good: 

    Bad: 
"""  # noqa: W291 - the author writes behind the colon
_BODIES = {"procedure": _STEPS}

_FIRST = ("procedure", "fault", "tool", "hazard", "page", "unit-family")
"""The order in which kinds are offered: what is written most often stands first."""


def blanks(manual: Manual) -> tuple[Blank, ...]:
    """Return a new page of every kind, put where this manual has pages of the kind already."""
    order = sorted(KINDS, key=lambda kind: _FIRST.index(kind) if kind in _FIRST else len(_FIRST))
    return tuple(
        Blank(kind, _title(kind), _folder(manual, kind), "\n".join(_lines(kind))) for kind in order
    )


def _title(kind: str) -> str:
    return _TITLES.get(kind, kind.capitalize())


def _folder(manual: Manual, kind: str) -> str:
    folders = Counter(dirname(each.file) for each in manual.pages() if type(each) is KINDS[kind])
    return folders.most_common(1)[0][0] if folders else _FOLDERS.get(kind, "")


def _lines(kind: str) -> Iterator[str]:
    yield "---"
    yield f"kind: {kind}"
    yield from (f"{name}:" for name in _needed(KINDS[kind]))
    yield "---"
    yield _BODIES.get(kind, "")


def _needed(kind: type[Page]) -> Iterator[str]:
    """Name the keys without which a page of this kind is refused, in the model's order."""
    for each in fields(kind):
        if each.default is NOTHING and each.name not in GIVEN:
            yield each.name
