"""Lists of links to pages: what comes before, what follows, where something is used."""

from collections.abc import Iterable, Sequence

from markupsafe import Markup

from underhoist.model import Fault, Page, Procedure
from underhoist.pages.here import Here
from underhoist.pages.html import NOTHING, contents, entry, join, link, section
from underhoist.pages.kinds import KINDS, list_of


def page_entry(here: Here, page: Page) -> Markup:
    """One page with its summary; a fault leads with the owner's words."""
    title = page.complaint.value if isinstance(page, Fault) else page.title.value
    return entry(here.to_page(page), title, page.summary.value)


def pages_list(here: Here, pages: Iterable[Page]) -> Markup:
    """Write a list of contents of the pages."""
    return contents(page_entry(here, page) for page in pages)


def procedures_list(here: Here, procedures: Iterable[Procedure]) -> Markup:
    """Write a list of contents of procedures."""
    return contents(procedure_entry(here, each) for each in procedures)


def procedure_entry(here: Here, procedure: Procedure) -> Markup:
    """Write a procedure with its summary and what it takes."""
    return entry(
        here.to_page(procedure),
        procedure.title.value,
        procedure.summary.value,
        f"{minutes(procedure.minutes.value)} · {procedure.who.value}",
    )


def minutes(count: int) -> str:
    """Say a number of minutes."""
    return "1 minute" if count == 1 else f"{count:,} minutes"


def families_of(here: Here, page: Procedure | Fault) -> Markup:
    """Write the unit families of a page as links, or the words that it fits any."""
    known = here.site.manual.families
    links = [
        Markup('<a href="{}">{}</a>').format(here.to_page(known[id_]), known[id_].title.value)
        for id_ in (each.value for each in page.unit_family)
        if id_ in known
    ]
    return join(links, ", ") if links else Markup("any unit")


MOST = 30
"""So many stand in a list on another page; where there are more, they have pages of their own."""

FIRST = 12
"""So many stand there where there are more."""

USED_KINDS = {
    "tool": ("tools", "Tools"),
    "part": ("parts", "Parts"),
    "torque": ("torques", "Torques"),
    "hazard": ("hazards", "Hazards"),
    "fluid": ("fluids", "Fluids"),
    "fault": ("faults", "Faults"),
    "procedure": ("procedures", "Procedures"),
    "family": ("families", "Unit families"),
    "calc": ("calculators", "Calculators"),
    "word": ("words", "Words"),
}
"""Where in the index "Where used" each scheme is, and its heading there."""


def used_section(here: Here, scheme: str, full_id: str, *, without: Iterable[Page] = ()) -> Markup:
    """Write the section "Where used"; it says so where nothing uses the thing."""
    left_out = {page.file for page in without}
    users = here.site.links.used_by(scheme, full_id)
    if users and all(page.file in left_out for page in users):
        return NOTHING
    return used_pages(here, scheme, full_id, [p for p in users if p.file not in left_out])


def used_pages(here: Here, scheme: str, full_id: str, users: Sequence[Page]) -> Markup:
    """Write the section for these users: so many, then a way to all of them."""
    kind, heading = USED_KINDS[scheme]
    many = len(users) > MOST
    shown = users[:FIRST] if many else users
    lines = used_list(here, shown) if users else Markup("<p>No page of the manual uses it.</p>")
    all_users = link(
        here.to(f"where-used/{kind}/{full_id}/"), f"All {len(users):,} pages that use it"
    )
    all_things = link(here.to(f"where-used/{kind}/"), f"{heading} and where each is used")
    ways = (
        Markup("<p>{}</p>").format(way) for way in ((all_users,) if many else ()) + (all_things,)
    )
    return section("uh-used", "Where used", lines, *ways)


def used_list(here: Here, users: Iterable[Page]) -> Markup:
    """Pages in the order of the manual, grouped by kind where there are several kinds."""
    groups = {name: list[Page]() for name, _ in (each[1:] for each in KINDS.values())}
    for page in users:
        name = list_of(page) or ("Other pages", "")
        groups.setdefault(name[0], []).append(page)
    filled = {name: pages for name, pages in groups.items() if pages}
    if len(filled) == 1:
        return pages_list(here, next(iter(filled.values())))
    return join(
        Markup("<h3>{}</h3>\n{}").format(name, pages_list(here, pages))
        for name, pages in filled.items()
    )
