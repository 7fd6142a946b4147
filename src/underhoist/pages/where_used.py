"""The index "Where used": a page for each kind of thing, in parts where there are many.

No page of it grows with the manual: a thing names its first few users, and where there are many
they have pages of their own.
"""

from collections.abc import Iterator, Sequence
from itertools import batched

from markupsafe import Markup

from underhoist.model import Page
from underhoist.pages.authored import purpose
from underhoist.pages.closing import closing
from underhoist.pages.here import Here
from underhoist.pages.html import NOTHING, contents, entry, join, link, section
from underhoist.pages.listing import MOST, USED_KINDS, page_entry
from underhoist.pages.sheet import Sheet
from underhoist.pages.site import Site
from underhoist.pages.things import Thing, things

INDEX = ("Where used", "where-used/")
A_PART = 120
"""Things that stand on one page."""
A_LIST = 100
"""Users of one thing that stand on one page."""
NAMED = 6
"""Users that are named beside a thing."""
WHOLE = "Each with the first few pages that need it."
_UNUSED = "nothing uses it"


def where_used_sheets(site: Site) -> Iterator[Sheet]:
    """Make the index, the pages of each kind, and pages for things that many pages use."""
    found = {scheme: things(site, scheme) for scheme in USED_KINDS}
    yield _index(site, {scheme: len(each) for scheme, each in found.items() if each})
    for scheme, each in found.items():
        if each:
            yield from _kind_sheets(site, scheme, each)
            for thing in each:
                if len(thing.users) > MOST:
                    yield from _thing_sheets(site, scheme, thing)


def _index(site: Site, counts: dict[str, int]) -> Sheet:
    here = Here(site, INDEX[1])
    summary = "Every tool, part, torque, hazard, fluid, fault and word, and the pages that need it."
    entries = contents(
        entry(here.to(_address(scheme)), USED_KINDS[scheme][1], f"{count:,} in all")
        for scheme, count in counts.items()
    )
    return _sheet(site, INDEX[1], INDEX[0], summary, entries)


def _kind_sheets(site: Site, scheme: str, found: Sequence[Thing]) -> Iterator[Sheet]:
    heading = USED_KINDS[scheme][1]
    parts = list(batched(found, A_PART, strict=False))
    for number, part in enumerate(parts, 1):
        here = Here(site, _address(scheme, number))
        lines = Markup("<dl>\n{}\n</dl>").format(join(_line(here, scheme, each) for each in part))
        title = f"{heading} and where each is used"
        yield _sheet(
            site,
            here.base,
            title if number == 1 else f"{title}, part {number}",
            f"{part[0].name} to {part[-1].name}." if len(parts) > 1 else WHOLE,
            section("uh-group", "From A to Z" if len(parts) == 1 else f"Part {number}", lines),
            _parts(here, scheme, number, [(each[0].name, each[-1].name) for each in parts]),
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


def _parts(here: Here, scheme: str, number: int, names: list[tuple[str, str]]) -> Markup:
    """Lead to the other parts of a kind, by the first and last name of each."""
    if len(names) == 1:
        return NOTHING
    items = join(
        Markup("<li>{}</li>").format(
            f"{first} to {last}"
            if part == number
            else link(here.to(_address(scheme, part)), f"{first} to {last}")
        )
        for part, (first, last) in enumerate(names, 1)
    )
    return section("uh-group", "All parts", Markup("<ul>\n{}\n</ul>").format(items))


def _thing_sheets(site: Site, scheme: str, thing: Thing) -> Iterator[Sheet]:
    """Make the pages that list every user of one thing."""
    users = sorted(thing.users, key=lambda page: page.title.value.casefold())
    parts: list[tuple[Page, ...]] = list(batched(users, A_LIST, strict=False))
    base = f"{_address(scheme)}{thing.id}/"
    addresses = [
        base if number == 1 else f"{base}part-{number}/" for number in range(1, len(parts) + 1)
    ]
    for number, part in enumerate(parts, 1):
        here = Here(site, addresses[number - 1])
        title = f"Where used: {thing.name}"
        ways = (
            Markup("<li>{}</li>").format(
                f"Part {at}" if at == number else link(here.to(address), f"Part {at}")
            )
            for at, address in enumerate(addresses, 1)
        )
        more = Markup("<ul>\n{}\n</ul>").format(join(ways)) if len(parts) > 1 else NOTHING
        yield _sheet(
            site,
            here.base,
            title if number == 1 else f"{title}, part {number}",
            f"The {len(users):,} pages that use it.",
            contents(page_entry(here, page) for page in part),
            section("uh-group", "All parts", more),
            trail=(INDEX, (USED_KINDS[scheme][1], _address(scheme)), (thing.name, thing.address)),
        )


def _address(scheme: str, part: int = 1) -> str:
    base = f"{INDEX[1]}{USED_KINDS[scheme][0]}/"
    return base if part == 1 else f"{base}part-{part}/"


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
