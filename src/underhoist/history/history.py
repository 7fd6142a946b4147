"""Puts a build beside the one before: which pages are new, gone, renamed or say something else."""

from collections.abc import Container, Iterable, Mapping
from pathlib import Path

from attrs import evolve, frozen

from underhoist.history import dates
from underhoist.history.change import Change, Rank
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
from underhoist.history.renames import following, renamed
from underhoist.model import Page
from underhoist.source import KINDS

BUILDS = 30
"""Builds that are remembered."""

CHANGES = 20_000
"""Changes that are remembered at most; the newest build is always remembered whole."""

FOLLOWS = "links follow pages that were renamed"
"""What is said of a page that only names other pages by their new ids."""

_KIND = {kind: name for name, kind in KINDS.items()}


def key_of(page: Page) -> str:
    """Name a page of any kind: "procedure:set-band"."""
    return f"{_KIND[type(page)]}:{page.id}"


@frozen(kw_only=True)
class Present:
    """A page as it is now."""

    title: str
    file: str
    author: str
    portrait: Portrait


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
    build: int | None
    """Number of this build; None where it is the same as the one before."""
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


def present(pages: Iterable[Page], painter: Painter) -> dict[str, Present]:
    """Paint the pages of a build, by their key."""
    return {key_of(page): present_as(page, painter.portrait(page)) for page in pages}


def present_as(page: Page, portrait: Portrait) -> Present:
    """Give a page as it is now, its portrait being painted already."""
    author = page.author.value if page.author else ""
    return Present(title=page.title.value, file=page.file, author=author, portrait=portrait)


def advance(
    before: Earlier, now: Mapping[str, Present], manual: str, same: Container[str] = ()
) -> History:
    """Compare a build with the one before; the same pages again make no new entry.

    Pages whose key is in `same` are known to be as that build's record has them.
    """
    old, problem = before.record, before.problem
    if old is not None and old.pages and not old.pages.keys() & now.keys():
        problem = f"The record of earlier builds is that of another manual, {old.manual}."
        old = None
    number = max((build.number for build in old.builds), default=0) + 1 if old else 1
    day = dates.today()
    came_from = renamed(old.pages, now) if old else {}
    kept: dict[str, Kept] = {}
    for key in now:
        if old is not None and key in same and key in old.pages:
            kept[key] = old.pages[key]
            continue
        page = now[key]
        past = old.pages.get(came_from.get(key, key)) if old else None
        entry = Entry(
            revision=revision(page.portrait),
            date=day,
            author=page.author,
            build=number,
            new=old is not None and past is None,
        )
        kept[key] = _kept(past, page, entry, came_from)
    gone = _gone(old, now, came_from)
    differs = bool(gone) or any(each.entries[0].build == number for each in kept.values())
    builds = old.builds if old else ()
    if differs:
        builds = (BuildNote(number=number, date=day, gone=gone), *builds)
    record = _bounded(Record(manual=manual, builds=builds, pages=kept))
    return History(
        record=record,
        build=number if differs else None,
        compared=old is not None,
        problem=problem,
    )


def _kept(past: Kept | None, page: Present, entry: Entry, came_from: Mapping[str, str]) -> Kept:
    """Put the new entry before the older ones, where there is something to tell."""
    entries = past.entries if past else ()
    if past is not None:
        changes = (*_moved(past, page), *_compared(past.portrait, page.portrait, came_from))
        entry = evolve(entry, changes=changes)
    if past is None or entry.changes:
        entries = (entry, *entries)
    return Kept(title=page.title, file=page.file, portrait=page.portrait, entries=entries)


def _compared(old: Portrait, new: Portrait, came_from: Mapping[str, str]) -> tuple[Change, ...]:
    if revision(old) == revision(new):
        return ()
    changes = compare(following(old, came_from) if came_from else old, new)
    return changes or (Change(words=FOLLOWS, rank=Rank.TEXT, elsewhere=True),)


def _moved(past: Kept, page: Present) -> tuple[Change, ...]:
    if past.file == page.file:
        return ()
    return (Change(words=f"the page moved: {past.file} -> {page.file}"),)


def _gone(
    old: Record | None, now: Mapping[str, Present], came_from: Mapping[str, str]
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
    pages = {key: _remembered(kept, first) for key, kept in record.pages.items()}
    return evolve(record, builds=tuple(builds), pages=pages)


def _remembered(kept: Kept, first: int) -> Kept:
    """Forget the revisions before a build, but for the present one."""
    if kept.entries[-1].build >= first:
        return kept
    run = sum(1 for _ in _same_revision(kept.entries))
    entries = tuple(
        entry for index, entry in enumerate(kept.entries) if entry.build >= first or index < run
    )
    is_whole = len(entries) == len(kept.entries)  # then the very same, or it would be written anew
    return kept if is_whole else evolve(kept, entries=entries)


def _same_revision(entries: tuple[Entry, ...]) -> Iterable[Entry]:
    """Yield the newest entries that are of the present revision."""
    for entry in entries:
        if entry.revision != entries[0].revision:
            return
        yield entry


def since(kept: Kept) -> str:
    """Give the day on which the present revision of a page was first built."""
    return list(_same_revision(kept.entries))[-1].date
