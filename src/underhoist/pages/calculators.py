"""The calculators: their index, and a page each that answers before any script runs."""

from collections.abc import Iterator
from itertools import groupby

from markupsafe import Markup
from underhoist_calculators import door
from underhoist_calculators.declare import Calculator

from underhoist.pages.authored import purpose
from underhoist.pages.closing import closing
from underhoist.pages.here import Here
from underhoist.pages.html import NOTHING, contents, entry, join, link, section
from underhoist.pages.listing import used_section
from underhoist.pages.preset_links import places
from underhoist.pages.sheet import Sheet
from underhoist.pages.site import Site

INDEX = ("Calculators", "calculators/")


def calculator_sheets(site: Site) -> Iterator[Sheet]:
    """Make the index and every calculator."""
    yield _index(site)
    for calculator in site.calculators.values():
        yield _sheet(site, calculator)


def _index(site: Site) -> Sheet:
    here = Here(site, INDEX[1])
    summary = "What must be computed, with the working shown. They answer without a signal too."
    groups = groupby(site.calculators.values(), key=lambda each: each.group)
    lists = (
        section(
            "uh-group",
            group.capitalize(),
            contents(
                entry(here.to(f"calculators/{each.name}/"), each.title, each.purpose)
                for each in calculators
            ),
        )
        for group, calculators in groups
    )
    return Sheet(
        address=INDEX[1],
        kind="index",
        title=INDEX[0],
        summary=summary,
        html=join((purpose(summary), *lists, closing(site))),
    )


def _sheet(site: Site, calculator: Calculator) -> Sheet:
    here = Here(site, f"calculators/{calculator.name}/")
    return Sheet(
        address=here.base,
        kind="calculator",
        title=calculator.title,
        summary=calculator.purpose,
        html=join(
            (
                purpose(calculator.purpose),
                _presets(here, calculator),
                Markup('<div id="calculator" data-calculator="{}">\n{}\n{}\n</div>').format(
                    calculator.name, *_worked(calculator)
                ),
                used_section(here, "calc", calculator.name),
                closing(site),
            )
        ),
        trail=(INDEX,),
    )


def _worked(calculator: Calculator) -> tuple[Markup, Markup]:
    """Write the form with its example entries, and the answer to them."""
    entries = door.example(calculator.name)
    form, answer = door.form(calculator.name), door.run(calculator.name, entries)["answer_html"]
    return Markup(form), Markup(answer)  # noqa: S704 - escaped by the calculators' own writer


def _presets(here: Here, calculator: Calculator) -> Markup:
    """Write the calculator filled in for each unit family and band setting of the manual."""
    links = (link(way, name) for name, way in places(here, calculator))
    items = join((Markup("<li>{}</li>").format(each) for each in links), "")
    if not items:
        return NOTHING
    return section("uh-presets", "Fill in for", Markup("<ul>{}</ul>").format(items))
