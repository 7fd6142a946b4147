"""The page that somebody wrote, whatever its kind."""

from collections.abc import Callable, Mapping
from typing import Any

from underhoist.model import Fault, Hazard, Page, PlainPage, Procedure, Tool, UnitFamily
from underhoist.pages.family import family_sheet
from underhoist.pages.fault import fault_sheet
from underhoist.pages.hazard import hazard_sheet
from underhoist.pages.plain import plain_sheet
from underhoist.pages.procedure import procedure_sheet
from underhoist.pages.sheet import Sheet
from underhoist.pages.site import Site
from underhoist.pages.tool import tool_sheet

_WRITERS: Mapping[type[Page], Callable[[Site, Any], Sheet]] = {
    PlainPage: plain_sheet,
    UnitFamily: family_sheet,
    Procedure: procedure_sheet,
    Fault: fault_sheet,
    Tool: tool_sheet,
    Hazard: hazard_sheet,
}


def page_sheet(site: Site, page: Page) -> Sheet | None:
    """Make the page; None for a text whose kind is not known."""
    write = _WRITERS.get(type(page))
    return write(site, page) if write else None
