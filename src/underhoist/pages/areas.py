"""The work by area: a page for each part of the unit, and one of it for each unit family."""

from collections.abc import Iterable, Iterator, Sequence
from itertools import groupby

from markdown.extensions.toc import slugify
from markupsafe import Markup

from underhoist.model import Fault, Procedure, UnitFamily
from underhoist.pages.authored import purpose
from underhoist.pages.closing import closing
from underhoist.pages.here import Here
from underhoist.pages.html import contents, entry, join, ways
from underhoist.pages.listing import procedures_list
from underhoist.pages.parted import part_title, parted
from underhoist.pages.sheet import Sheet
from underhoist.pages.site import Site

FOLDER = "areas/"
ALL = ("Procedures", "procedures/")
NAMED = 4
"""So many procedures of an area are named beside it: no list must grow with the manual."""


def area_sheets(site: Site) -> Iterator[Sheet]:
    """Make the list of areas, and the pages of each."""
    manual = site.manual
    here = Here(site, ALL[1])
    summary = "The work, by the part of the unit."
    none = Markup("<p>There are none in this manual yet.</p>")
    inner = areas_list(here, manual.procedures.values()) or none
    html = join((purpose(summary), inner, closing(site)))
    yield Sheet(address=here.base, kind="index", title=ALL[0], summary=summary, html=html)
    for area, group in _by_area(manual.procedures.values()):
        yield from _sheets(site, area, group)
        for family in manual.families.values():
            if own := [each for each in group if fits(each, family)]:
                yield from _sheets(site, area, own, family)


def areas_list(
    here: Here, procedures: Iterable[Procedure], family: UnitFamily | None = None
) -> Markup:
    """Write the areas of these procedures, which are all or all of a family, with a few of each."""
    return contents(
        entry(here.to(_address(area, family)), area.capitalize(), _some(group))
        for area, group in _by_area(procedures)
    )


def areas_ways(here: Here, procedures: Iterable[Procedure]) -> Markup:
    """Write the areas of these procedures by name alone."""
    areas = (area for area, _ in _by_area(procedures))
    return ways("Areas", {here.to(_address(area, None)): area.capitalize() for area in areas})


def fits(page: Procedure | Fault, family: UnitFamily) -> bool:
    """Whether a page is for this family, or for any."""
    return any(each.value in {family.id, "any"} for each in page.unit_family)


def _by_area(procedures: Iterable[Procedure]) -> Iterator[tuple[str, list[Procedure]]]:
    """Yield each area of work with its procedures, in the order of the alphabet.

    Two ways of writing an area that would share an address are one area.
    """
    ordered = sorted(procedures, key=lambda each: (_slug(each), each.title.value.casefold()))
    for _, group in groupby(ordered, key=_slug):
        found = list(group)
        yield found[0].area.value, found


def _slug(procedure: Procedure) -> str:
    return slugify(procedure.area.value, "-")


def _some(procedures: Sequence[Procedure]) -> str:
    """Name the first few procedures, and how many more there are."""
    titles = [each.title.value for each in procedures[:NAMED]]
    more = len(procedures) - len(titles)
    return "; ".join([*titles, f"{more:,} more"] if more else titles)


def _address(area: str, family: UnitFamily | None) -> str:
    base = f"{FOLDER}{slugify(area, '-')}/"
    return f"{base}{family.id}/" if family else base


def _sheets(
    site: Site, area: str, group: Sequence[Procedure], family: UnitFamily | None = None
) -> Iterator[Sheet]:
    title = f"{area.capitalize()}, {family.title.value}" if family else area.capitalize()
    summary = f"{len(group):,} procedures." if len(group) > 1 else "One procedure."
    base = _address(area, family)
    for number, here, part, others in parted(site, base, group, lambda each: each.title.value):
        yield Sheet(
            address=here.base,
            kind="index",
            title=part_title(title, number),
            summary=summary,
            html=join((purpose(summary), procedures_list(here, part), others, closing(site))),
            trail=(ALL,),
            searched=False,
        )
