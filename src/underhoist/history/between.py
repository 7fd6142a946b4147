"""Compares two states of a manual that are named on the command line."""

from collections.abc import Mapping
from pathlib import Path

from underhoist.check import check
from underhoist.history.history import Earlier, Present, advance, present
from underhoist.history.record import FILE, Kept, NoRecordError, Record, read
from underhoist.history.report import lines
from underhoist.links import weave
from underhoist.project import Unusable, pages_folder
from underhoist.words import listing


def between(old: Path, new: Path) -> list[str]:
    """Tell in words what differs. Raises Unusable where one of the two cannot be read whole."""
    before, after = _state(old), _state(new)
    history = advance(Earlier(record=_record(before)), after, "")
    if history.problem:
        raise Unusable(f"{old} and {new} have no page in common: they are two manuals.")
    return list(lines(history, history.build)) if history.build else []


def _state(place: Path) -> Mapping[str, Present]:
    if place.is_file() or (place / FILE).is_file():
        try:
            record = read(place)
        except NoRecordError as problem:
            raise Unusable(f"{place} holds no record of a build: {problem}.") from None
        return {key: _of(kept) for key, kept in record.pages.items()}
    return _of_project(place)


def _of_project(place: Path) -> Mapping[str, Present]:
    from underhoist.pages.portraits import painter  # noqa: PLC0415  # pages stand on history

    folder = pages_folder(place)
    manual = check(folder).manual
    if manual.unread:
        files = listing(sorted(manual.unread.values()))
        msg = f"{place}: {files} cannot be read yet. Run underhoist check, mend that, compare then."
        raise Unusable(msg)
    return present(manual.pages(), painter(manual, weave(manual), folder))


def _of(kept: Kept) -> Present:
    author = kept.entries[0].author
    return Present(title=kept.title, file=kept.file, author=author, portrait=kept.portrait)


def _record(pages: Mapping[str, Present]) -> Record:
    """Make a record of one build out of its pages."""
    return advance(Earlier(), pages, "").record
