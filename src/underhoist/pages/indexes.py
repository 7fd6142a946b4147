"""The lists of pages by kind."""

from collections.abc import Iterator, Mapping

from markupsafe import Markup

from underhoist.model import Page
from underhoist.pages.authored import purpose
from underhoist.pages.closing import closing
from underhoist.pages.here import Here
from underhoist.pages.html import join, section
from underhoist.pages.listing import area_id, by_area, pages_list, procedures_list
from underhoist.pages.sheet import Sheet
from underhoist.pages.site import Site


def index_sheets(site: Site) -> Iterator[Sheet]:
    """Make the lists of unit families, procedures, faults, tools and hazards."""
    manual = site.manual
    yield _list(site, "families/", "Unit families", "The units this manual knows.", manual.families)
    yield _list(site, "faults/", "Faults", "Complaints in the owner's words.", manual.faults)
    yield _list(site, "tools/", "Tools", "What to fetch, and where it is used.", manual.tools)
    yield _list(site, "hazards/", "Hazards", "Every caution of the manual.", manual.hazards)
    here = Here(site, "procedures/")
    inner = join(
        section("uh-group", area.capitalize(), procedures_list(here, group), id_=area_id(area))
        for area, group in by_area(manual.procedures.values())
    )
    yield _sheet(site, here.base, "Procedures", "The work, by the part of the unit.", inner)


def _list(site: Site, address: str, title: str, summary: str, pages: Mapping[str, Page]) -> Sheet:
    return _sheet(site, address, title, summary, pages_list(Here(site, address), pages.values()))


def _sheet(site: Site, address: str, title: str, summary: str, inner: Markup) -> Sheet:
    none = Markup("<p>There are none in this manual yet.</p>")
    html = join((purpose(summary), inner or none, closing(site)))
    return Sheet(address=address, kind="index", title=title, summary=summary, html=html)
