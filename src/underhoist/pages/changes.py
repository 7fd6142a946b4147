"""What changed: the last builds, each build page by page, and the files that go with them."""

import json
from collections.abc import Iterator
from itertools import batched

from attrs import frozen
from markupsafe import Markup

from underhoist.history import History, Rank, dates, record
from underhoist.history.record import BuildNote, Entry, Kept
from underhoist.links import page_address
from underhoist.pages.authored import purpose
from underhoist.pages.closing import closing
from underhoist.pages.here import Here
from underhoist.pages.html import NOTHING, join, link, section
from underhoist.pages.revisions import FIRST, words_list
from underhoist.pages.sheet import Sheet
from underhoist.pages.site import Site

INDEX = ("What changed", "changes/")
NEWEST = 8
"""Builds that stand on the first page; the older ones are behind links."""
TOLD = 20
"""Torques and capacities of one build that stand on the first page."""
A_PART = 60
"""Pages of one build that stand on one page."""
A_CARD = 20
"""Revisions that a job card is told of."""
NO_RECORD = "This build keeps no record, so nothing can be compared."


@frozen
class _Build:
    """One build with its pages, those that others were told of last."""

    note: BuildNote
    pages: tuple[tuple[Kept, Entry], ...]

    @property
    def is_first(self) -> bool:
        """Whether there was nothing to compare it with."""
        told = (entry.new or entry.changes for _, entry in self.pages)
        return not (any(told) or self.note.gone)


def change_sheets(site: Site) -> Iterator[Sheet]:
    """Make the page of the last builds, and one or more for each build."""
    builds = [_build(site.history, note) for note in _notes(site)]
    yield _overview(site, builds)
    for build in builds:
        if not build.is_first:
            yield from _build_sheets(site, build)


def change_files(site: Site, known: record.Lines | None = None) -> Iterator[tuple[str, str]]:
    """Yield path and text of the record, and of each procedure's revisions for job cards.

    Pages of the record that are `known` are not written again.
    """
    if site.history is None:
        return
    yield record.FILE, record.write(site.history.record, known)
    for id_, procedure in site.manual.procedures.items():
        kept = site.history.kept(procedure)
        entries = [_for_card(entry) for entry in kept.entries[:A_CARD]] if kept else []
        text = json.dumps(entries, ensure_ascii=False, separators=(",", ":"))
        yield f"{INDEX[1]}data/{id_}.json", text


def _for_card(entry: Entry) -> dict[str, object]:
    words = ["the page is new"] if entry.new else [each.words for each in entry.changes]
    return {
        "revision": entry.revision, "date": entry.date, "author": entry.author, "words": words,
    }  # fmt: skip


def _notes(site: Site) -> tuple[BuildNote, ...]:
    return site.history.record.builds if site.history else ()


def _build(history: History | None, note: BuildNote) -> _Build:
    changed = history.changed_in(note.number).values() if history else ()
    ordered = sorted(changed, key=lambda each: (_first_rank(each[1]), each[0].title.casefold()))
    return _Build(note, tuple(ordered))


def _first_rank(entry: Entry) -> tuple[bool, Rank]:
    own = [each.rank for each in entry.changes if not each.elsewhere]
    return not own, min(own, default=Rank.TEXT)


def _overview(site: Site, builds: list[_Build]) -> Sheet:
    here = Here(site, INDEX[1])
    summary = "What the last builds of this manual changed, torques and capacities first."
    newest = (_summary(here, build) for build in builds[:NEWEST])
    older = join(Markup("<li>{}</li>").format(_way(here, build)) for build in builds[NEWEST:])
    nothing = "" if builds else Markup("<p>{}</p>").format(NO_RECORD)
    html = join(
        (
            purpose(summary),
            nothing,
            *newest,
            section("uh-group", "Older builds", Markup("<ul>\n{}\n</ul>").format(older))
            if older
            else "",
            closing(site),
        )
    )
    return Sheet(
        address=INDEX[1], kind="changes", title=INDEX[0], summary=summary, html=html, searched=False
    )


def _way(here: Here, build: _Build) -> Markup:
    """Link to the page of a build; the first has none."""
    day = dates.in_words(build.note.date)
    if build.is_first:
        return Markup("{}").format(f"{day}: the first build on record")
    return link(here.to(_address(build)), f"{day}: {_counts(build)}")


def _summary(here: Here, build: _Build) -> Markup:
    """Write one build: its torques and capacities, then how much else there is."""
    heading = dates.in_words(build.note.date)
    if build.is_first:
        return section("uh-group", heading, Markup("<p>{}</p>").format(f"First built. {FIRST}"))
    first = [
        f"{kept.title}: {change.words}"
        for kept, entry in build.pages
        for change in entry.changes
        if change.rank <= Rank.CAPACITY and not change.elsewhere
    ]
    more = len(first) - TOLD
    return section(
        "uh-group",
        heading,
        words_list(first[:TOLD]),
        Markup("<p>{}</p>").format(f"And {more} more torques and capacities.") if more > 0 else "",
        Markup("<p>{}</p>").format(
            link(here.to(_address(build)), f"Page by page: {_counts(build)}")
        ),
    )


def _counts(build: _Build) -> str:
    """Say how many pages changed, are new and went away."""
    new = sum(entry.new for _, entry in build.pages)
    counts = {
        "changed": len(build.pages) - new,
        "new": new,
        "gone": len(build.note.gone),
    }
    words = [
        f"{count:,} {'page' if count == 1 else 'pages'} {what}"
        for what, count in counts.items()
        if count
    ]
    return ", ".join(words)


def _address(build: _Build, part: int = 1) -> str:
    base = f"{INDEX[1]}{build.note.number}/"
    return base if part == 1 else f"{base}{part}/"


def _build_sheets(site: Site, build: _Build) -> Iterator[Sheet]:
    parts = list(batched(build.pages, A_PART, strict=False)) or [()]
    for number, pages in enumerate(parts, 1):
        here = Here(site, _address(build, number))
        day = dates.in_words(build.note.date)
        title = f"Changes of {day}"
        summary = f"What the build of {day} changed, page by page."
        yield Sheet(
            address=here.base,
            kind="changes",
            title=title if number == 1 else f"{title}, part {number}",
            summary=summary,
            html=join(
                (
                    purpose(summary),
                    _gone(build) if number == 1 else "",
                    *(_page(here, kept, entry) for kept, entry in pages),
                    _other_parts(here, build, number, len(parts)),
                    closing(site),
                )
            ),
            trail=(INDEX,),
            searched=False,
        )


def _gone(build: _Build) -> Markup:
    return section(
        "uh-group",
        "Went away",
        words_list(f"{each.title} ({each.file})" for each in build.note.gone),
    )


def _page(here: Here, kept: Kept, entry: Entry) -> Markup:
    """Write one page's changes under its title."""
    by = f" Written by {entry.author}." if entry.author else ""
    words = words_list(each.words for each in entry.changes)
    title = link(here.to(page_address(kept.file)), kept.title)
    note = Markup("<p>{}</p>").format(f"The page is new.{by}" if entry.new else by.strip())
    return Markup('<section class="uh-group">\n<h2>{}</h2>\n{}\n</section>').format(
        title, join((words, note if entry.new or by else ""))
    )


def _other_parts(here: Here, build: _Build, number: int, count: int) -> Markup:
    if count == 1:
        return NOTHING
    ways = join(
        Markup("<li>{}</li>").format(
            f"Part {part}"
            if part == number
            else link(here.to(_address(build, part)), f"Part {part}")
        )
        for part in range(1, count + 1)
    )
    return section("uh-group", "All parts", Markup("<ul>\n{}\n</ul>").format(ways))
