"""What the pages of a site say, as plain data, for their revisions."""

from collections.abc import Mapping
from pathlib import Path

from underhoist_calculators.declare import Calculator

from underhoist.history.portrait import Painter
from underhoist.links import Links
from underhoist.model import Manual, Page, UnitFamily
from underhoist.pages import presets

_TOLD = "adjustment.seat"
"""A torque that the page names itself."""


def painter(manual: Manual, links: Links, folder: Path) -> Painter:
    """Give the painter of a manual's pages."""

    def filled(page: Page, calculator: Calculator) -> Mapping[str, str]:
        if isinstance(page, UnitFamily):  # its own values, which its facts hold
            return {}
        values = presets.for_page(manual, page)
        keys = (each.fills_from for each in calculator.fields if each.fills_from)
        return {key: values[key] for key in keys if key in values and key != _TOLD}

    return Painter(manual, links, folder, filled)
