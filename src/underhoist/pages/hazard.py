"""A hazard: its panel as it stands in every procedure, when it is a must, where it is used."""

from collections.abc import Iterator

from markupsafe import Markup

from underhoist.model import Hazard
from underhoist.pages.authored import prose, sheet
from underhoist.pages.fluids import fluid_link
from underhoist.pages.hazard_panel import panel
from underhoist.pages.here import Here
from underhoist.pages.html import join, link, section
from underhoist.pages.listing import used_section
from underhoist.pages.sheet import Sheet
from underhoist.pages.site import Site


def hazard_sheet(site: Site, hazard: Hazard) -> Sheet:
    """Make the page of a hazard."""
    here = Here.on(site, hazard)
    items = join(Markup("<li>{}</li>").format(line) for line in _conditions(here, hazard))
    required = Markup("<ul>\n{}\n</ul>").format(items) if items else ""
    return sheet(
        here,
        hazard,
        panel(hazard),
        section("uh-required", "When a procedure must name it", required),
        prose(here),
        used_section(here, "hazard", hazard.id),
    )


def _conditions(here: Here, hazard: Hazard) -> Iterator[Markup]:
    """Write what makes the caution a must, one line a sort."""
    when = hazard.required_when
    tools = (here.target("tool", each.value) for each in when.tools)
    sorts = {
        "It uses": [link(here.to_target(each), each.title) for each in tools if each],
        "It works on": [each.value for each in when.areas],
        "It handles": [fluid_link(here, each.value) for each in when.fluids],
        "Its steps say": [f"“{each.value}”" for each in when.words],
    }
    for words, things in sorts.items():
        if things:
            yield Markup("{} {}.").format(words, join(things, " or "))
