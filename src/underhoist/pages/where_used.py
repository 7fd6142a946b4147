"""The index "Where used": a page for each kind of thing, in parts where there are many.

No page of it grows with the manual: a thing names its first few users, and where there are many
they have pages of their own.
"""

from collections.abc import Iterator, Sequence

from markupsafe import Markup

from underhoist.model import Page
from underhoist.pages.authored import purpose
from underhoist.pages.closing import closing
from underhoist.pages.here import Here
from underhoist.pages.html import contents, entry, join, link, section
from underhoist.pages.listing import MOST, USED_KINDS
from underhoist.pages.parted import part_title, parted
from underhoist.pages.sheet import Sheet
from underhoist.pages.site import Site
from underhoist.pages.things import Thing, things

INDEX = ("Where used", "where-used/")
A_PART = 120
"""Things that stand on one page."""
A_LIST = 250
"""Users of one thing that stand on one page, by their titles."""
NAMED = 6
"""Users that are named beside a thing."""
WHOLE = "Each with the first few pages that need it."
_UNUSED = "nothing uses it"


def where_used_sheets(site: Site, scheme: str) -> Iterator[Sheet]:
    """Make the pages of a kind of thing, and pages for things of it that many pages use."""
    found = things(site, scheme)
    if not found:
        return
    yield from _kind_sheets(site, scheme, found)
    for thing in found:
        if len(thing.users) > MOST:
            yield from _thing_sheets(site, scheme, thing)


def where_used_index(site: Site) -> Sheet:
    """Make the list of the kinds."""
    found = {scheme: len(things(site, scheme)) for scheme in USED_KINDS}
    counts = {scheme: count for scheme, count in found.items() if count}
    here = Here(site, INDEX[1])
    summary = "Every tool, part, torque, hazard, fluid, fault and word, and the pages that need it."
    entries = contents(
        entry(here.to(_address(scheme)), USED_KINDS[scheme][1], f"{count:,} in all")
        for scheme, count in counts.items()
    )
    return _sheet(site, INDEX[1], INDEX[0], summary, entries)


def _kind_sheets(site: Site, scheme: str, found: Sequence[Thing]) -> Iterator[Sheet]:
    title = f"{USED_KINDS[scheme][1]} and where each is used"
    for number, here, part, ways in parted(
        site, _address(scheme), found, lambda each: each.name, A_PART
    ):
        lines = Markup("<dl>\n{}\n</dl>").format(join(_line(here, scheme, each) for each in part))
        yield _sheet(
            site,
            here.base,
            part_title(title, number),
            f"{part[0].name} to {part[-1].name}." if ways else WHOLE,
            section("uh-group", f"Part {number}" if ways else "From A to Z", lines),
            ways,
        )


def _line(here: Here, scheme: str, thing: Thing) -> Markup:
    """Write a thing with its first few users."""
    users = [link(here.to_page(page), page.title.value) for page in thing.users[:NAMED]]
    rest = len(thing.users) - NAMED
    if rest > 0:
        way = f"{_address(scheme)}{thing.id}/" if len(thing.users) > MOST else thing.address
        users.append(link(here.to(way), f"{rest:,} more"))
    return Markup("<div><dt>{}</dt><dd>{}</dd></div>").format(
        link(here.to(thing.address), thing.name), join(users, ", ") or _UNUSED
    )


def _thing_sheets(site: Site, scheme: str, thing: Thing) -> Iterator[Sheet]:
    """Make the pages that list every user of one thing."""
    users = sorted(thing.users, key=lambda page: page.title.value.casefold())
    base = f"{_address(scheme)}{thing.id}/"
    for number, here, part, ways in parted(site, base, users, _title, A_LIST):
        yield _sheet(
            site,
            here.base,
            part_title(f"Where used: {thing.name}", number),
            f"The {len(users):,} pages that use it.",
            contents(entry(here.to_page(page), _title(page)) for page in part),
            ways,
            trail=(INDEX, (USED_KINDS[scheme][1], _address(scheme)), (thing.name, thing.address)),
        )


def _title(page: Page) -> str:
    return page.title.value


def _address(scheme: str) -> str:
    return f"{INDEX[1]}{USED_KINDS[scheme][0]}/"


def _sheet(
    site: Site,
    address: str,
    title: str,
    summary: str,
    *inner: str,
    trail: tuple[tuple[str, str], ...] | None = None,
) -> Sheet:
    above = (INDEX,) if address != INDEX[1] else ()
    return Sheet(
        address=address,
        kind="index",
        title=title,
        summary=summary,
        html=join((purpose(summary), *inner, closing(site))),
        trail=above if trail is None else trail,
        searched=False,
    )
