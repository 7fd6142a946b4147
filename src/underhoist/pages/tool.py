"""A tool: what it covers and where it is used."""

from underhoist_calculators.units import unit_words

from underhoist.model import Tool
from underhoist.pages.authored import prose, sheet
from underhoist.pages.here import Here
from underhoist.pages.html import facts
from underhoist.pages.listing import used_section
from underhoist.pages.quantities import show_span
from underhoist.pages.sheet import Sheet
from underhoist.pages.site import Site


def tool_sheet(site: Site, tool: Tool) -> Sheet:
    """Make the page of a tool."""
    here = Here.on(site, tool)
    return sheet(
        here,
        tool,
        facts(
            f"Covers {show_span(tool.torque_range.value)}" if tool.torque_range else "",
            f"Its scale reads {unit_words(tool.scale.value)}" if tool.scale else "",
        ),
        prose(here),
        used_section(here, "tool", tool.id),
    )
