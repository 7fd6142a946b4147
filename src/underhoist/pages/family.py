"""A unit family: what is true of it, each value once, and all that the manual has on it."""

from markupsafe import Markup

from underhoist.model import Fault, Procedure, UnitFamily
from underhoist.pages import family_limits as limits
from underhoist.pages import family_tables as tables
from underhoist.pages.areas import areas_list, fits
from underhoist.pages.authored import prose, sheet
from underhoist.pages.here import Here
from underhoist.pages.html import contents, entry, join, jumps, section
from underhoist.pages.listing import pages_list, used_section
from underhoist.pages.preset_links import preset_links
from underhoist.pages.presets import for_adjustment, for_family
from underhoist.pages.sheet import Sheet
from underhoist.pages.site import Site

_WORK = "Procedures"
_PROCEDURES = "uh-procedures"


def family_sheet(site: Site, family: UnitFamily) -> Sheet:
    """Make the page of a unit family."""
    here = Here.on(site, family)
    manual = site.manual
    faults = [each for each in manual.faults.values() if fits(each, family)]
    procedures = [each for each in manual.procedures.values() if fits(each, family)]
    values = _section_table(here, family, faults)
    return sheet(
        here,
        family,
        _ways(here, values, procedures),
        *(section(at, words, inner, id_=at) for at, (words, inner) in values.items()),
        prose(here),
        section(_PROCEDURES, _WORK, areas_list(here, procedures, family), id_=_PROCEDURES),
        used_section(here, "family", family.id, without=[*faults, *procedures]),
    )


def _section_table(
    here: Here, family: UnitFamily, faults: list[Fault]
) -> dict[str, tuple[str, Markup]]:
    """Return what the family says in values: anchor to heading and contents, in order."""
    return {
        "uh-faults": ("Complaints", pages_list(here, faults)),
        "uh-torques": ("Torques", tables.torques(here, family)),
        "uh-adjustments": ("Adjustments", tables.adjustments(here, family)),
        "uh-fluid": ("Fluid", tables.fluid(here, family)),
        "uh-windows": ("Shift speeds", tables.shift_windows(family)),
        "uh-hydraulics": (_hydraulics_title(family), tables.hydraulics(family)),
        "uh-cable": ("Throttle cable", limits.throttle_cable(family)),
        "uh-line-pressure": ("Line pressure", limits.line_pressure(family)),
        "uh-stall": ("Stall speed", limits.stall(family)),
        "uh-ratios": ("Gear ratios", tables.gear_ratios(family)),
        "uh-parts": ("Parts", _parts(here, family)),
        "uh-calculators": ("Calculators, filled in", _calculators(here, family)),
    }


def _ways(here: Here, values: dict[str, tuple[str, Markup]], procedures: list[Procedure]) -> Markup:
    """Write links to the sections that have something in them: the page fills many screens."""
    written = {each.id: each.heading for each in here.sections if each.heading is not None}
    return jumps(
        "On this page",
        {at: words for at, (words, inner) in values.items() if inner}
        | written
        | ({_PROCEDURES: _WORK} if procedures else {}),
    )


def _hydraulics_title(family: UnitFamily) -> str:
    return "Governor" if family.modulator is None else "Modulator and governor"


def _calculators(here: Here, family: UnitFamily) -> Markup:
    """Write the calculators filled in with the family's values, then those of its settings."""
    settings = (
        Markup("<h3>{}</h3>\n{}").format(each.name.value, links)
        for each in family.adjustments.values()
        if (links := preset_links(here, for_adjustment(family, each)))
    )
    return join((preset_links(here, for_family(family)), *settings))


def _parts(here: Here, family: UnitFamily) -> Markup:
    return contents(
        entry(
            here.to(f"parts/{family.id}/{id_}/"),
            part.name.value,
            f"{len(part.variants)} look-alikes" if len(part.variants) > 1 else "",
        )
        for id_, part in family.parts.items()
    )
