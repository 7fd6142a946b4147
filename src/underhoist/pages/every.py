"""All pages of the site, in the order in which they are built."""

from collections.abc import Iterator

from underhoist.pages.calculators import calculator_sheets
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


def sheets(site: Site) -> Iterator[Sheet]:
    """Every page, each address once: a page that somebody wrote goes before one that is made."""
    taken: set[str] = set()
    for sheet in (*_authored(site), *_generated(site)):
        if sheet.address not in taken:
            taken.add(sheet.address)
            yield sheet


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
