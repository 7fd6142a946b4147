"""Puts a build beside the one before: which pages are new, gone, renamed or say something else."""

from collections.abc import Iterable, Mapping
from pathlib import Path

from attrs import evolve, frozen

from underhoist.history import dates
from underhoist.history.change import Change
from underhoist.history.compare import compare
from underhoist.history.portrait import Painter, Portrait, revision
from underhoist.history.record import (
    BuildNote,
    Entry,
    Gone,
    Kept,
    NoRecordError,
    Record,
    read,
)
from underhoist.history.renames import renamed
from underhoist.model import Page
from underhoist.source import KINDS

BUILDS = 30
"""Builds that are remembered."""

CHANGES = 20_000
"""Changes that are remembered at most; the newest build is always remembered whole."""

_KIND = {kind: name for name, kind in KINDS.items()}


def key_of(page: Page) -> str:
    """Name a page of any kind: "procedure:set-band"."""
    return f"{_KIND[type(page)]}:{page.id}"


@frozen(kw_only=True)
class Earlier:
    """The record of earlier builds, or why there is none."""

    record: Record | None = None
    problem: str = ""
    """What is wrong with a record that is there, or that was named; "" where nothing is."""


@frozen(kw_only=True)
class History:
    """What is known of a manual's builds, the present one included."""

    record: Record
    compared: bool
    """Whether there was an earlier build to compare with."""
    problem: str = ""

    def kept(self, page: Page) -> Kept | None:
        """Return what is kept of a page; None for one that was not built."""
        return self.record.pages.get(key_of(page))

    @property
    def latest(self) -> BuildNote | None:
        """The newest build with a difference."""
        return next(iter(self.record.builds), None)

    def changed_in(self, build: int) -> dict[str, tuple[Kept, Entry]]:
        """Return the pages that were new or different in a build, by their key."""
        return {
            key: (kept, entry)
            for key, kept in self.record.pages.items()
            for entry in kept.entries
            if entry.build == build
        }


def earlier(site: Path, since: Path | None = None) -> Earlier:
    """Read the record that `since` names, else that of the old site.

    A site without a record is none to complain of; a record that cannot be used is.
    """
    place = since or site
    try:
        return Earlier(record=read(place))
    except NoRecordError as problem:
        quiet = since is None and str(problem) == "there is none"
        words = f"The record of earlier builds in {place} cannot be used: {problem}."
        return Earlier(problem="" if quiet else words)


def advance(before: Earlier, pages: Iterable[Page], painter: Painter, manual: str) -> History:
    """Compare a build with the one before; the same pages again make no new entry."""
    now = {key_of(page): page for page in pages}
    old, problem = before.record, before.problem
    if old is not None and not old.pages.keys() & now.keys():
        problem = f"The record of earlier builds is that of another manual, {old.manual}."
        old = None
    number = max((build.number for build in old.builds), default=0) + 1 if old else 1
    day = dates.today()
    portraits = {key: painter.portrait(page) for key, page in now.items()}
    came_from = renamed(old.pages, now, portraits) if old else {}
    kept: dict[str, Kept] = {}
    for key, page in now.items():
        past = old.pages.get(came_from.get(key, key)) if old else None
        entry = Entry(
            revision=revision(portraits[key]),
            date=day,
            author=page.author.value if page.author else "",
            build=number,
            new=old is not None and past is None,
        )
        kept[key] = _kept(past, page, portraits[key], entry)
    gone = _gone(old, now, came_from)
    differs = bool(gone) or any(each.entries[0].build == number for each in kept.values())
    builds = old.builds if old else ()
    if differs:
        builds = (BuildNote(number=number, date=day, gone=gone), *builds)
    record = _bounded(Record(manual=manual, builds=builds, pages=kept))
    return History(record=record, compared=old is not None, problem=problem)


def _kept(past: Kept | None, page: Page, portrait: Portrait, entry: Entry) -> Kept:
    """Put the new entry before the older ones, where there is something to tell."""
    entries = past.entries if past else ()
    if past is not None:
        entry = evolve(entry, changes=(*_moved(past, page), *_compared(past, portrait)))
    if past is None or entry.changes:
        entries = (entry, *entries)
    return Kept(title=page.title.value, file=page.file, portrait=portrait, entries=entries)


def _compared(past: Kept, portrait: Portrait) -> tuple[Change, ...]:
    if revision(past.portrait) == revision(portrait):
        return ()
    return compare(past.portrait, portrait)


def _moved(past: Kept, page: Page) -> tuple[Change, ...]:
    if past.file == page.file:
        return ()
    return (Change(words=f"the page moved: {past.file} -> {page.file}"),)


def _gone(
    old: Record | None, now: Mapping[str, Page], came_from: Mapping[str, str]
) -> tuple[Gone, ...]:
    lost = old.pages.keys() - now.keys() - set(came_from.values()) if old else set[str]()
    pages = old.pages if old else {}
    return tuple(
        Gone(key=key, title=pages[key].title, file=pages[key].file) for key in sorted(lost)
    )


def _bounded(record: Record) -> Record:
    """Forget old builds; of every page at least the present revision is known."""
    counts: dict[int, int] = {}
    for kept in record.pages.values():
        for entry in kept.entries:
            counts[entry.build] = counts.get(entry.build, 0) + 1 + len(entry.changes)
    builds: list[BuildNote] = []
    total = 0
    for build in record.builds[:BUILDS]:
        total += counts.get(build.number, 0) + len(build.gone)
        if builds and total > CHANGES:
            break
        builds.append(build)
    first = builds[-1].number if builds else 0
    pages = {
        key: evolve(kept, entries=_remembered(kept.entries, first))
        for key, kept in record.pages.items()
    }
    return evolve(record, builds=tuple(builds), pages=pages)


def _remembered(entries: tuple[Entry, ...], first: int) -> tuple[Entry, ...]:
    run = sum(1 for _ in _same_revision(entries))
    return tuple(
        entry for index, entry in enumerate(entries) if entry.build >= first or index < run
    )


def _same_revision(entries: tuple[Entry, ...]) -> Iterable[Entry]:
    """Yield the newest entries that are of the present revision."""
    for entry in entries:
        if entry.revision != entries[0].revision:
            return
        yield entry


def since(kept: Kept) -> str:
    """Give the day on which the present revision of a page was first built."""
    return list(_same_revision(kept.entries))[-1].date
