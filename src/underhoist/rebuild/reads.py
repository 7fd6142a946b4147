"""Notes what is read of a site while a page is made, so that it is known when the page is stale.

A read is the way to a mapping and the key that was asked for: ("manual.tools", "hoist"). Whoever
walks over a whole mapping reads `EVERY` key of it.
"""

# ruff: noqa: ANN401  (a site may hold anything)

from collections.abc import Iterator, Mapping
from typing import Any, cast, override

from attrs import evolve, fields, has

from underhoist.model import Page
from underhoist.references import Target

Read = tuple[str, object]


class EVERY:
    """In place of a key: all of them, and their order. A class, for what is kept names it."""


FILES = "manual.files"
"""The way to the manual's files; a file that changed on the disk is a read of its name here."""

_NEVER_SHOWN = frozenset({
    "manual.repeated", "manual.drafts", "links.count",
    "history.build", "history.compared", "history.problem",
})  # fmt: skip
"""What no page shows, so that its change makes none stale."""

_BUILDS, _BUILT = "history.record.builds", "history.record.pages"
"""Who tells of the builds goes through the pages that were built."""


class Notes:
    """The reads since the notes were last taken."""

    def __init__(self) -> None:
        self._reads: set[Read] = set()
        self.note = self._reads.add

    def take(self) -> frozenset[Read]:
        """Return the reads and begin anew."""
        taken = frozenset(self._reads)
        self._reads.clear()
        return taken


class _NotedMapping(Mapping[Any, Any]):
    """A mapping that notes which of its keys is read."""

    def __init__(self, held: Mapping[Any, Any], way: str, notes: Notes) -> None:
        self._held, self._way, self._note = held, way, notes.note

    @override
    def __getitem__(self, key: Any) -> Any:
        self._note((self._way, key))
        return self._held[key]

    @override
    def __contains__(self, key: object) -> bool:
        self._note((self._way, key))
        return key in self._held

    @override
    def __iter__(self) -> Iterator[Any]:
        self._note((self._way, EVERY))
        return iter(self._held)

    @override
    def __len__(self) -> int:
        self._note((self._way, EVERY))
        return len(self._held)

    @override
    def values(self) -> Any:
        self._note((self._way, EVERY))
        return self._held.values()

    @override
    def items(self) -> Any:
        self._note((self._way, EVERY))
        return self._held.items()


class _NotedNames(frozenset[str]):
    """A set of names that notes which of them is asked for."""

    way: str
    notes: Notes

    @override
    def __contains__(self, name: object) -> bool:
        self.notes.note((self.way, name))
        return super().__contains__(name)

    @override
    def __iter__(self) -> Iterator[str]:
        self.notes.note((self.way, EVERY))
        return super().__iter__()


def noted[S](site: S, notes: Notes) -> S:
    """Return the site with every mapping in it noting its reads."""
    return _noted(site, "", notes)


def _noted(thing: Any, way: str, notes: Notes) -> Any:
    if isinstance(thing, Mapping):
        return _NotedMapping(cast("Mapping[Any, Any]", thing), way, notes)
    if isinstance(thing, frozenset):
        names = _NotedNames(cast("frozenset[str]", thing))
        names.way, names.notes = way, notes
        return names
    if not has(_kind(thing)):
        return thing
    return evolve(thing, **{name: _noted(held, at, notes) for name, at, held in _parts(thing, way)})


def changes(old: object, new: object) -> frozenset[Read] | None:
    """Return the reads that would come out otherwise on the new site; None where any might."""
    found: set[Read] = set()
    return frozenset(found) if _compare(old, new, "", found) else None


def _compare(old: Any, new: Any, way: str, found: set[Read]) -> bool:
    """Collect the changes below this way; say whether they can be told one by one."""
    kind, other = _kind(old), _kind(new)
    if old is new or way in _NEVER_SHOWN:
        return True
    if way == _BUILDS and old and new:
        found.update([(_BUILT, EVERY)] if old != new else [])
        return True
    if isinstance(old, Mapping) and isinstance(new, Mapping):
        found.update(_changed_keys(cast("Any", old), cast("Any", new), way))
        return True
    if isinstance(old, frozenset) and isinstance(new, frozenset):
        names = cast("frozenset[str]", old) ^ cast("frozenset[str]", new)
        found.update((way, name) for name in (*names, EVERY) if names)
        return True
    if has(kind) and kind is other:
        pairs = zip(_parts(old, way), _parts(new, way), strict=True)
        told = [_compare(a, b, at, found) for (_, at, a), (_, _, b) in pairs]
        return all(told)
    return bool(old == new)


def _changed_keys(old: Mapping[Any, Any], new: Mapping[Any, Any], way: str) -> Iterator[Read]:
    missing = object()
    pairs = {key: (old.get(key, missing), new.get(key, missing)) for key in old.keys() | new.keys()}
    shown = [
        key for key, (a, b) in pairs.items() if a is not b and a != b and not _looks_same(a, b)
    ]
    yield from ((way, key) for key in shown)
    if shown or list(old) != list(new):
        yield way, EVERY


def _looks_same(old: Any, new: Any) -> bool:
    """Whether nothing changed that other pages show: of a page they show its facts, not its text.

    A page itself is made anew when its file changes. What its text names and says is in the links.
    """
    if old is new:
        return True
    if isinstance(old, Page) and type(old) is type(new):
        return evolve(old, body=new.body) == new
    if isinstance(old, Target) and isinstance(new, Target):
        same = (old.scheme, old.id, old.title) == (new.scheme, new.id, new.title)
        return same and _looks_same(old.thing, new.thing)
    if isinstance(old, tuple) and isinstance(new, tuple):
        pair = cast("tuple[Any, ...]", old), cast("tuple[Any, ...]", new)
        return len(pair[0]) == len(pair[1]) and all(map(_looks_same, *pair))
    return bool(old == new)


def _kind(thing: object) -> type:
    return type(thing)


def _parts(thing: Any, way: str) -> list[tuple[str, str, Any]]:
    """Return name, way and value of each attribute."""
    given: Any = (each for each in fields(cast("Any", type(thing))) if each.init)
    return [
        (each.alias, f"{way}.{each.name}" if way else each.name, getattr(thing, each.name))
        for each in given
    ]
