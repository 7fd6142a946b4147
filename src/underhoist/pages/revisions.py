"""Which revision a page is, since when, and what was different from the one before."""

from collections.abc import Iterable

from attrs import evolve
from markupsafe import Markup

from underhoist.history import dates, since
from underhoist.history.portrait import revision
from underhoist.history.record import Entry, Kept
from underhoist.model import Page, PlainPage
from underhoist.pages.here import Here
from underhoist.pages.html import NOTHING, join, link, section
from underhoist.pages.portraits import painter
from underhoist.pages.site import Site

NEWEST = 3
"""Revisions whose changes stand on the page itself."""
MOST = 12
"""Changes of one revision that stand on a page; the page of the build has them all."""
FIRST = "There is no earlier build to compare with."


def revision_of(site: Site, page: Page) -> str:
    """Ten hexadecimal digits that change whenever the page would read differently."""
    kept = _kept(site, page)
    if kept is not None:
        return kept.entries[0].revision
    painted = painter(site.manual, site.links, site.folder)
    return revision(painted.portrait(evolve(page, body=site.texts[page.file])))


def since_of(site: Site, page: Page) -> str | None:
    """Day on which this revision was first built, in words; None where no record is kept."""
    kept = _kept(site, page)
    return dates.in_words(since(kept)) if kept else None


def changes_section(here: Here, page: Page, about: str = "") -> Markup:
    """Write the page's last changes, or those of one thing on it, newest first."""
    kept = _kept(here.site, page)
    if kept is None:
        return NOTHING
    entries = [_about(entry, about) for entry in kept.entries]
    told = [entry for entry in entries if entry.changes or (entry.new and not about)]
    if not told and (isinstance(page, PlainPage) or about):
        return NOTHING
    lists = join(_entry(here, entry) for entry in told[:NEWEST])
    return section("uh-changes", "What changed", lists or _nothing(kept), id_="what-changed")


def words_list(words: Iterable[str]) -> Markup:
    """Write words of change as a list."""
    items = join(Markup("<li>{}</li>").format(arrow(each)) for each in words)
    return Markup("<ul>\n{}\n</ul>").format(items) if items else NOTHING


def arrow(words: str) -> str:
    """Set the arrow of a change as one sign, with a capital where the words begin."""
    words = words.replace(" -> ", " \N{RIGHTWARDS ARROW}\N{NO-BREAK SPACE}")
    return words[:1].upper() + words[1:]


def _kept(site: Site, page: Page) -> Kept | None:
    return site.history.kept(page) if site.history else None


def _about(entry: Entry, about: str) -> Entry:
    if not about:
        return entry
    return evolve(entry, changes=tuple(each for each in entry.changes if each.about == about))


def _entry(here: Here, entry: Entry) -> Markup:
    by = f", {entry.author}" if entry.author else ""
    words = ["The page is new."] if entry.new else [each.words for each in entry.changes]
    heading = Markup("<h3>{}</h3>").format(f"{dates.in_words(entry.date)}{by}")
    rest = len(words) - MOST
    way = here.to(f"changes/{entry.build}/")
    more = link(way, f"{rest} more") if rest > 0 else ""
    return join(
        (heading, words_list(words[:MOST]), Markup("<p>{}</p>").format(more) if more else "")
    )


def _nothing(kept: Kept) -> Markup:
    words = f"First built on {dates.in_words(since(kept))}. {FIRST}"
    return Markup("<p>{}</p>").format(words)
