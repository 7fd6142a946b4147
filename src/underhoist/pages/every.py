"""All pages of the site, in the order in which they are built."""

from collections.abc import Callable, Iterable, Iterator
from functools import partial

from attrs import frozen

from underhoist.link_targets import MADE
from underhoist.links import page_address
from underhoist.model import Manual, Page
from underhoist.pages.areas import area_sheets
from underhoist.pages.calculators import calculator_sheets
from underhoist.pages.changes import change_sheets
from underhoist.pages.drafting import drafting_sheet
from underhoist.pages.fluids import fluid_sheets
from underhoist.pages.front_matter import front_matter_sheets
from underhoist.pages.indexes import index_sheets
from underhoist.pages.listing import USED_KINDS
from underhoist.pages.one import page_sheet
from underhoist.pages.part import part_sheets
from underhoist.pages.plain import front_sheet
from underhoist.pages.rules import rule_sheets
from underhoist.pages.sheet import Sheet
from underhoist.pages.shells import shell_sheets
from underhoist.pages.site import Site
from underhoist.pages.torque import torque_sheets
from underhoist.pages.where_used import where_used_index, where_used_sheets
from underhoist.project import Unusable

Make = Callable[[Site], Iterable[Sheet]]

GENERATED: dict[str, Make] = {
    "front": lambda site: [front_sheet(site)],
    "indexes": index_sheets,
    "areas": area_sheets,
    "torques": torque_sheets,
    "parts": part_sheets,
    "calculators": calculator_sheets,
    "fluids": fluid_sheets,
    "where used": lambda site: [where_used_index(site)],
    **{f"where used: {each}": partial(where_used_sheets, scheme=each) for each in USED_KINDS},
    "changes": change_sheets,
    "rules": rule_sheets,
    "front matter": front_matter_sheets,
    "shells": shell_sheets,
    "drafting": lambda site: [drafting_sheet(site)],
}
"""What makes the pages that nobody wrote, one entry for pages that are made together."""

_AUTHORED = ("plain", "families", "procedures", "faults", "tools", "hazards")
"""The manual's groups of pages in the order of the site."""


@frozen
class Maker:
    """Makes one page, or pages that are only made together; known by its name."""

    name: str
    make: Make


def sheets(site: Site) -> Iterator[Sheet]:
    """Every page, each address once: a page that somebody wrote goes before one that is made.

    Raises Unusable where two pages would stand in one place, or one in a place that is made.
    """
    check_addresses(site.manual)
    taken: set[str] = set()
    for maker in makers(site.manual):
        for sheet in maker.make(site):
            if sheet.address not in taken:
                taken.add(sheet.address)
                yield sheet


def makers(manual: Manual) -> Iterator[Maker]:
    """Give what makes each page, by the file of the page or the name in `GENERATED`."""
    for group in _AUTHORED:
        pages: dict[str, Page] = getattr(manual, group)
        yield from (Maker(page.file, _written(group, id_)) for id_, page in pages.items())
    yield from (Maker(name, make) for name, make in GENERATED.items())


def _written(group: str, id_: str) -> Make:
    """Take the page from the site that is asked for, so that what it shows is known from there."""

    def make(site: Site) -> Iterable[Sheet]:
        sheet = page_sheet(site, getattr(site.manual, group)[id_])
        return (sheet,) if sheet else ()

    return make


def check_addresses(manual: Manual) -> None:
    """Raise Unusable where two pages would stand in one place, or one in a place that is made."""
    files: dict[str, str] = {}
    for page in manual.pages():
        address = page_address(page.file)
        folder = address.partition("/")[0]
        if folder in MADE:
            msg = (
                f"{page.file}: the build makes the folder {folder} itself. Put the page elsewhere."
            )
            raise Unusable(msg)
        if address in files:
            msg = (
                f"{files[address]} and {page.file} would stand at one address. Rename one of them."
            )
            raise Unusable(msg)
        files[address] = page.file
