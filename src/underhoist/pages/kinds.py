"""What each kind of page is called, and where the list of its kind is."""

from underhoist.model import Fault, Hazard, Page, Procedure, Tool, UnitFamily

KINDS: dict[type[Page], tuple[str, str, str]] = {
    UnitFamily: ("unit-family", "Unit families", "families/"),
    Procedure: ("procedure", "Procedures", "procedures/"),
    Fault: ("fault", "Faults", "faults/"),
    Tool: ("tool", "Tools", "tools/"),
    Hazard: ("hazard", "Hazards", "hazards/"),
}
"""Kind as in the front matter, the heading of its list and the list's address."""


def kind_of(page: Page) -> str:
    """Return the page's kind as its front matter says it."""
    return KINDS[type(page)][0] if type(page) in KINDS else "page"


def list_of(page: Page) -> tuple[str, str] | None:
    """Title and address of the list that holds the page, None for a plain page."""
    return KINDS[type(page)][1:] if type(page) in KINDS else None
