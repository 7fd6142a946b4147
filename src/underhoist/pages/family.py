"""A unit family: what is true of it, each value once, and all that the manual has on it."""

from markupsafe import Markup

from underhoist.model import Fault, Procedure, UnitFamily
from underhoist.pages import family_limits as limits
from underhoist.pages import family_tables as tables
from underhoist.pages.authored import prose, sheet
from underhoist.pages.here import Here
from underhoist.pages.html import contents, entry, join, section
from underhoist.pages.listing import by_area, pages_list, procedures_list, used_section
from underhoist.pages.preset_links import preset_links
from underhoist.pages.presets import for_adjustment, for_family
from underhoist.pages.sheet import Sheet
from underhoist.pages.site import Site


def family_sheet(site: Site, family: UnitFamily) -> Sheet:
    """Make the page of a unit family."""
    here = Here.on(site, family)
    manual = site.manual
    faults = [each for each in manual.faults.values() if fits(each, family)]
    procedures = [each for each in manual.procedures.values() if fits(each, family)]
    others = [*faults, *procedures]
    return sheet(
        here,
        family,
        section("uh-faults", "Complaints", pages_list(here, faults)),
        section("uh-torques", "Torques", tables.torques(here, family)),
        section("uh-adjustments", "Adjustments", tables.adjustments(here, family)),
        section("uh-fluid", "Fluid", tables.fluid(here, family)),
        section("uh-windows", "Shift speeds", tables.shift_windows(family)),
        section("uh-hydraulics", _hydraulics_title(family), tables.hydraulics(family)),
        section("uh-cable", "Throttle cable", limits.throttle_cable(family)),
        section("uh-line-pressure", "Line pressure", limits.line_pressure(family)),
        section("uh-stall", "Stall speed", limits.stall(family)),
        section("uh-ratios", "Gear ratios", tables.gear_ratios(family)),
        section("uh-parts", "Parts", _parts(here, family)),
        section("uh-calculators", "Calculators, filled in", _calculators(here, family)),
        prose(here),
        section("uh-procedures", "Procedures", _by_area(here, procedures)),
        used_section(here, "family", family.id, without=others),
    )


def fits(page: Procedure | Fault, family: UnitFamily) -> bool:
    """Whether a page is for this family, or for any."""
    return any(each.value in {family.id, "any"} for each in page.unit_family)


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


def _by_area(here: Here, procedures: list[Procedure]) -> Markup:
    return join(
        Markup("<h3>{}</h3>\n{}").format(area.capitalize(), procedures_list(here, group))
        for area, group in by_area(procedures)
    )


def _parts(here: Here, family: UnitFamily) -> Markup:
    return contents(
        entry(
            here.to(f"parts/{family.id}/{id_}/"),
            part.name.value,
            f"{len(part.variants)} look-alikes" if len(part.variants) > 1 else "",
        )
        for id_, part in family.parts.items()
    )
