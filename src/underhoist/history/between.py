"""Compares two states of a manual that are named on the command line."""

from collections.abc import Mapping
from pathlib import Path

from attrs import frozen

from underhoist.check import check
from underhoist.history.history import Earlier, Present, advance, present
from underhoist.history.record import FILE, Kept, NoRecordError, Record, read
from underhoist.history.report import lines
from underhoist.links import weave
from underhoist.project import Unusable, pages_folder


@frozen
class _State:
    """The pages of one state, and the files that could not be read."""

    pages: Mapping[str, Present]
    unread: frozenset[str] = frozenset()


def between(old: Path, new: Path) -> list[str]:
    """Tell in words what differs. Raises Unusable where one of the two cannot be read.

    A page that cannot be read on one side is left out on both, and named.
    """
    states = [_state(old), _state(new)]
    unread = states[0].unread | states[1].unread
    before, after = (_without(state.pages, unread) for state in states)
    history = advance(Earlier(record=_record(before)), after, "")
    if history.problem:
        raise Unusable(f"{old} and {new} have no page in common: they are two manuals.")
    told = list(lines(history, history.build)) if history.build else []
    return [*told, *(f"{file} cannot be read and was left out." for file in sorted(unread))]


def _state(place: Path) -> _State:
    if place.is_file() or (place / FILE).is_file():
        try:
            record = read(place)
        except NoRecordError as problem:
            raise Unusable(f"{place} holds no record of a build: {problem}.") from None
        return _State({key: _of(kept) for key, kept in record.pages.items()})
    return _of_project(place)


def _of_project(place: Path) -> _State:
    from underhoist.pages.portraits import painter  # noqa: PLC0415  # pages stand on history

    folder = pages_folder(place)
    manual = check(folder).manual
    pages = present(manual.pages(), painter(manual, weave(manual), folder))
    return _State(pages, frozenset(manual.unread.values()))


def _of(kept: Kept) -> Present:
    author = kept.entries[0].author
    return Present(title=kept.title, file=kept.file, author=author, portrait=kept.portrait)


def _without(pages: Mapping[str, Present], unread: frozenset[str]) -> dict[str, Present]:
    return {key: page for key, page in pages.items() if page.file not in unread}


def _record(pages: Mapping[str, Present]) -> Record:
    """Make a record of one build out of its pages."""
    return advance(Earlier(), pages, "").record
