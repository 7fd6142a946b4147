"""The lists of pages by kind."""

from collections.abc import Iterator, Mapping

from markupsafe import Markup

from underhoist.model import Fault, Page
from underhoist.pages.authored import purpose
from underhoist.pages.closing import closing
from underhoist.pages.html import join
from underhoist.pages.listing import pages_list
from underhoist.pages.parted import part_title, parted
from underhoist.pages.sheet import Sheet
from underhoist.pages.site import Site


def index_sheets(site: Site) -> Iterator[Sheet]:
    """Make the lists of unit families, faults, tools and hazards."""
    manual = site.manual
    lists: dict[str, tuple[str, str, Mapping[str, Page]]] = {
        "families/": ("Unit families", "The units this manual knows.", manual.families),
        "faults/": ("Faults", "Complaints in the owner's words.", manual.faults),
        "tools/": ("Tools", "What to fetch, and where it is used.", manual.tools),
        "hazards/": ("Hazards", "Every caution of the manual.", manual.hazards),
    }
    for address, (title, summary, pages) in lists.items():
        yield from _list(site, address, title, summary, list(pages.values()))


def _list(site: Site, address: str, title: str, summary: str, pages: list[Page]) -> Iterator[Sheet]:
    none = Markup("<p>There are none in this manual yet.</p>")
    for number, here, part, ways in parted(site, address, pages, _name):
        inner = pages_list(here, part) or none
        yield Sheet(
            address=here.base,
            kind="index",
            title=part_title(title, number),
            summary=summary,
            html=join((purpose(summary), inner, ways, closing(site))),
        )


def _name(page: Page) -> str:
    return page.complaint.value if isinstance(page, Fault) else page.title.value
