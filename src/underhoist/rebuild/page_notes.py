"""What follows from one page and from what it looks up: kept until one of these is another."""

from collections.abc import Iterable, Iterator, Mapping
from functools import partial
from pathlib import Path

from attrs import frozen
from underhoist_calculators import get

from underhoist import rules
from underhoist.history import Portrait
from underhoist.links import Links, uses_of, words_said
from underhoist.model import Manual, Page
from underhoist.pages.portraits import painter
from underhoist.rebuild.keeper import Single
from underhoist.rebuild.kept_rules import Source
from underhoist.references import OWNED, PAGES, Target


@frozen
class Named:
    """Something that a page names, without the thing itself: that is another in each build."""

    scheme: str
    id: str
    title: str
    group: str
    """The manual's group of pages in which it or its owner is; "" for a calculator."""


@frozen
class PageNotes:
    """What one page comes to."""

    address: str
    """Its file."""
    named: tuple[Named, ...]
    says: tuple[str, ...]
    """The shop's words in it."""
    said: rules.OfPage
    """What the rules say of it."""


@frozen
class Woven:
    """What a page's portrait is made from."""

    manual: Manual
    links: Links


@frozen
class Painted:
    """The portrait of one page."""

    address: str
    """Its file."""
    portrait: Portrait


def note_makers(source: Source) -> Iterator[Single[Source, PageNotes]]:
    """Give what makes each page's notes."""
    for page in source.manual.texts():
        yield Single(page.file, partial(_notes, page))


def portrait_makers(folder: Path, woven: Woven) -> Iterator[Single[Woven, Painted]]:
    """Give what paints each page; `folder` is where the manual's drawings are."""
    for page in woven.manual.pages():
        yield Single(page.file, partial(_painted, page, folder))


def named_targets(manual: Manual, named: Iterable[Named]) -> tuple[Target, ...]:
    """Find again what a page names: it is there, or the page's notes would have been made anew."""
    return tuple(Target(each.scheme, each.id, each.title, _thing(manual, each)) for each in named)


def _notes(page: Page, source: Source) -> Iterable[PageNotes]:
    manual = source.manual
    named = tuple(_named(manual, each) for each in uses_of(manual, page))
    yield PageNotes(page.file, named, words_said(manual, page), rules.of_page(manual, page))


def _painted(page: Page, folder: Path, woven: Woven) -> Iterable[Painted]:
    paint = painter(woven.manual, woven.links, folder)
    yield Painted(page.file, paint.portrait(page))


def _named(manual: Manual, target: Target) -> Named:
    groups = (group for group in _groups(target.scheme) if _is_in(manual, group, target))
    return Named(target.scheme, target.id, target.title, next(groups, ""))


def _groups(scheme: str) -> tuple[str, ...]:
    if scheme in OWNED:
        return OWNED[scheme][1]
    return (PAGES[scheme],) if scheme in PAGES else ()


def _is_in(manual: Manual, group: str, target: Target) -> bool:
    """Whether the group has this very thing."""
    named = Named(target.scheme, target.id, "", group)
    try:
        return _thing(manual, named) is target.thing
    except KeyError:
        return False


def _thing(manual: Manual, named: Named) -> object:
    if not named.group:
        return get(named.id)
    pages: Mapping[str, Page] = getattr(manual, named.group)
    if named.scheme in PAGES:
        return pages[named.id]
    owner, _, short = named.id.partition("/")
    return getattr(pages[owner], OWNED[named.scheme][0])[short]
