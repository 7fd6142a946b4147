"""The index at the back: tools, parts, fluids, faults, cautions and words, and their pages."""

from collections.abc import Iterable, Iterator, Mapping
from itertools import groupby

from attrs import frozen

from underhoist.bound import name_of
from underhoist.links import page_address, word_anchor
from underhoist.model import Manual
from underhoist.pages import Sheet, Site
from underhoist.pages.things import Thing, things

_SCHEMES = ("tool", "part", "fluid", "hazard", "fault", "calc", "word")
_MOST = 16
"""Pages named beside an entry; a thing that is used everywhere is found without an index."""


@frozen
class Entry:
    """One line: a name, the place that tells what it is, and those that use it or our own name."""

    name: str
    place: str = ""
    users: tuple[str, ...] = ()
    more: int = 0
    """Users that are not named."""
    see: str = ""


@frozen
class Letter:
    """The entries that begin with one letter."""

    letter: str
    entries: tuple[Entry, ...]


def index(site: Site, sheets: Iterable[Sheet]) -> list[Letter]:
    """Make the index of a book that holds these pages, in their order."""
    order = {sheet.address: at for at, sheet in enumerate(sheets)}
    entries = [*_entries(site, order), *_other_names(site.manual, order)]
    entries.sort(key=lambda each: (each.name.casefold(), each.place))
    lettered = groupby(entries, key=lambda each: each.name[0].upper())
    return [Letter(letter, tuple(each)) for letter, each in lettered]


def _entries(site: Site, order: Mapping[str, int]) -> Iterator[Entry]:
    for scheme in _SCHEMES:
        for thing in things(site, scheme):
            at, _, anchor = thing.address.partition("#")
            if at in order:
                yield _entry(thing, at, anchor, order)


def _entry(thing: Thing, at: str, anchor: str, order: Mapping[str, int]) -> Entry:
    users = {page_address(page.file) for page in thing.users} & order.keys() - {at}
    places = [name_of(each) for each in sorted(users, key=order.__getitem__)]
    place = f"{name_of(at)}.{anchor}" if anchor else name_of(at)
    return Entry(thing.name, place, tuple(places[:_MOST]), max(0, len(places) - _MOST))


def _other_names(manual: Manual, order: Mapping[str, int]) -> Iterator[Entry]:
    """Lead from the names that others use to ours."""
    for page in manual.plain.values():
        if page_address(page.file) in order:
            for ours, word in page.words.items():
                place = f"{name_of(page_address(page.file))}.{word_anchor(ours)}"
                for other in (*word.also, *word.heard):
                    yield Entry(other.value, place, see=ours)
