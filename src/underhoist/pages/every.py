"""All pages of the site, in the order in which they are built."""

from collections.abc import Iterator

from underhoist.link_targets import MADE
from underhoist.links import page_address
from underhoist.pages.calculators import calculator_sheets
from underhoist.pages.drafting import drafting_sheet
from underhoist.pages.family import family_sheet
from underhoist.pages.fault import fault_sheet
from underhoist.pages.hazard import hazard_sheet
from underhoist.pages.indexes import index_sheets
from underhoist.pages.part import part_sheets
from underhoist.pages.plain import front_sheet, plain_sheet
from underhoist.pages.procedure import procedure_sheet
from underhoist.pages.rules import rule_sheets
from underhoist.pages.sheet import Sheet
from underhoist.pages.shells import shell_sheets
from underhoist.pages.site import Site
from underhoist.pages.tool import tool_sheet
from underhoist.pages.torque import torque_sheets
from underhoist.pages.where_used import where_used_sheet
from underhoist.project import Unusable


def sheets(site: Site) -> Iterator[Sheet]:
    """Every page, each address once: a page that somebody wrote goes before one that is made."""
    _check_addresses(site)
    taken: set[str] = set()
    for sheet in (*_authored(site), *_generated(site)):
        if sheet.address not in taken:
            taken.add(sheet.address)
            yield sheet


def _check_addresses(site: Site) -> None:
    """Raise Unusable where two pages would stand in one place, or one in a place that is made."""
    files: dict[str, str] = {}
    for page in site.manual.pages():
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


def _authored(site: Site) -> Iterator[Sheet]:
    manual = site.manual
    yield from (plain_sheet(site, each) for each in manual.plain.values())
    yield from (family_sheet(site, each) for each in manual.families.values())
    yield from (procedure_sheet(site, each) for each in manual.procedures.values())
    yield from (fault_sheet(site, each) for each in manual.faults.values())
    yield from (tool_sheet(site, each) for each in manual.tools.values())
    yield from (hazard_sheet(site, each) for each in manual.hazards.values())


def _generated(site: Site) -> Iterator[Sheet]:
    yield front_sheet(site)
    yield from index_sheets(site)
    yield from torque_sheets(site)
    yield from part_sheets(site)
    yield from calculator_sheets(site)
    yield where_used_sheet(site)
    yield from rule_sheets(site)
    yield from shell_sheets(site)
    yield drafting_sheet(site)
