"""A page of plain text; the front page adds where everything is."""

from collections.abc import Iterator

from markupsafe import Markup

from underhoist.model import PlainPage
from underhoist.pages.access import access_table
from underhoist.pages.areas import areas_ways
from underhoist.pages.authored import prose, purpose, sheet
from underhoist.pages.closing import closing
from underhoist.pages.here import Here
from underhoist.pages.html import contents, entry, join, link, section, ways
from underhoist.pages.listing import FIRST, MOST, pages_list
from underhoist.pages.sheet import Sheet
from underhoist.pages.site import Site
from underhoist.pages.words import words_list


def plain_sheet(site: Site, page: PlainPage) -> Sheet:
    """Make a page of plain text."""
    here = Here.on(site, page)
    declared = (access_table(here, page), words_list(page.words))
    if here.base:
        return sheet(here, page, prose(here), *declared)
    return sheet(here, page, prose(here), *declared, _entrances(here))


def front_sheet(site: Site) -> Sheet:
    """Make the front page of a manual that has no index.md of its own."""
    here = Here(site, "")
    summary = "The workshop manual: complaints, procedures and calculators."
    html = join((purpose(summary), _entrances(here), closing(site)))
    return Sheet(address="", kind="page", title=site.name, summary=summary, html=html)


def _entrances(here: Here) -> Markup:
    """Write the ways into the manual: by complaint, by unit, by work, by what is to be computed."""
    manual = here.site.manual
    return join(
        (
            section("uh-faults", "What the owner says", *_complaints(here)),
            section("uh-families", "Unit families", pages_list(here, manual.families.values())),
            section("uh-procedures", "The work", areas_ways(here, manual.procedures.values())),
            section("uh-calculators", "Calculators", _calculators(here)),
            section("uh-more", "Look up", _lists(here)),
        )
    )


def _complaints(here: Here) -> Iterator[Markup]:
    """Write the complaints, and the way to all of them where there are many."""
    faults = list(here.site.manual.faults.values())
    many = len(faults) > MOST
    shown = faults[:FIRST] if many else faults
    yield contents(entry(here.to_page(each), each.complaint.value) for each in shown)
    if many:
        yield Markup("<p>{}</p>").format(
            link(here.to("faults/"), f"All {len(faults):,} complaints")
        )


def _calculators(here: Here) -> Markup:
    calculators = here.site.calculators.values()
    return ways("Calculators", {here.to(f"calculators/{e.name}/"): e.title for e in calculators})


def _lists(here: Here) -> Markup:
    """Write the lists that every manual has."""
    lists = {
        "torques/": ("Torques", "Every torque in every unit."),
        "parts/": ("Parts", "Look-alikes and what tells them apart."),
        "tools/": ("Tools", "What to fetch and where it is used."),
        "hazards/": ("Hazards", "Every caution of the manual."),
        "fluids/": ("Fluids", "Every fluid, and the units that want it."),
        "where-used/": (
            "Where used",
            "Every tool, part, torque, fluid and word, and who needs it.",
        ),
        "changes/": ("What changed", "The last builds, torques and capacities first."),
        "drafting/": (
            "Write a page",
            "What is wrong with it is said at once; drafts stay on this device.",
        ),
        "front-matter/": ("Front matter", "Every key of a page, and how its value is written."),
        "rules/": ("Rules", "What the check refuses, with good and bad examples."),
    }
    return contents(entry(here.to(way), title, note) for way, (title, note) in lists.items())
