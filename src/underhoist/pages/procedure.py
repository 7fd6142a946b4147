"""A procedure, its parts in the order of DITA's task and of IEC/IEEE 82079-1.

Preliminary requirements (what comes first, what to fetch, cautions), context, steps, what follows.
"""

from collections.abc import Iterable, Iterator, Sequence

from attrs import evolve
from markupsafe import Markup

from underhoist.model import Fastener, Hazard, Part, Procedure
from underhoist.pages.authored import prose, sheet, words_of
from underhoist.pages.fluids import fluid_link
from underhoist.pages.hazard_panel import panel
from underhoist.pages.here import Here
from underhoist.pages.howto import howto
from underhoist.pages.html import NOTHING, facts, join, link, section
from underhoist.pages.listing import (
    FIRST,
    MOST,
    families_of,
    minutes,
    pages_list,
    used_section,
)
from underhoist.pages.plate import plate
from underhoist.pages.sheet import Sheet
from underhoist.pages.site import Site
from underhoist.pages.steps import Step, reading_line, steps, steps_list
from underhoist.signal_words import SIGNALS


def procedure_sheet(site: Site, procedure: Procedure) -> Sheet:
    """Make the page of a procedure."""
    here = Here.on(site, procedure)
    made = steps(here)
    hazards = _cautions(here, procedure)
    context = prose(here, without=("Steps", "What follows"))
    written = sheet(
        here,
        procedure,
        _facts(here, procedure),
        section(
            "uh-first", "What comes first", *_neighbours(here, site.links.before[procedure.id])
        ),
        _fetch(here, procedure),
        section("uh-hazards", "Cautions", *map(panel, hazards)),
        context,
        _loose_values(here, procedure, made),
        section("uh-work", "Steps", words_of(here, "Steps"), steps_list(made), id_="steps"),
        section(
            "uh-follows",
            "What follows",
            words_of(here, "What follows"),
            *_neighbours(here, site.links.follows[procedure.id]),
            id_="what-follows",
        ),
        _used(here, procedure),
    )
    return evolve(written, steps=made, data=howto(here, procedure, made, hazards, context))


def _facts(here: Here, procedure: Procedure) -> Markup:
    return facts(
        minutes(procedure.minutes.value),
        procedure.who.value,
        families_of(here, procedure),
        procedure.area.value,
    )


def _neighbours(here: Here, ids: Sequence[str]) -> Iterator[Markup]:
    """Links to other procedures by id: a procedure before or after everything leads to a few."""
    known = here.site.manual.procedures
    many = len(ids) > MOST
    yield pages_list(here, (known[id_] for id_ in (ids[:FIRST] if many else ids)))
    if many and here.page:
        way = here.to(f"where-used/procedures/{here.page.id}/")
        words = f"All {len(ids):,} procedures, among the pages that name this one"
        yield Markup("<p>{}</p>").format(link(way, words))


def _cautions(here: Here, procedure: Procedure) -> list[Hazard]:
    """Give the hazards that the page declares, the gravest first."""
    known = here.site.manual.hazards
    declared = (known[each.value] for each in procedure.cautions if each.value in known)
    return sorted(declared, key=lambda hazard: SIGNALS.index(hazard.signal.value))


def _fetch(here: Here, procedure: Procedure) -> Markup:
    """Tools, then what is used up, then parts to identify: to be fetched once."""
    tools = (link(here.to_page(tool), tool.title.value) for tool in here.tools)
    return section(
        "uh-fetch",
        "What to fetch",
        _items("tools", "Tools", tools),
        _items("fluids", "Fluids", (fluid_link(here, each.value) for each in procedure.fluids)),
        _items("consumables", "Consumables", (each.value for each in procedure.consumables)),
        _items("parts", "Parts to identify", (_part(here, each.value) for each in procedure.parts)),
    )


def _items(name: str, heading: str, items: Iterable[str]) -> Markup:
    inner = join(Markup("<li>{}</li>").format(item) for item in items if item)
    if not inner:
        return NOTHING
    return Markup('<div class="uh-fetch__{}">\n<h3>{}</h3>\n<ul>\n{}\n</ul>\n</div>').format(
        name, heading, inner
    )


def _part(here: Here, id_: str) -> Markup:
    """Write a part, with a warning where it has look-alikes."""
    target = here.target("part", id_)
    if target is None or not isinstance(target.thing, Part):
        return NOTHING
    count = len(target.thing.variants)
    words = f", {count} look-alikes: measure it" if count > 1 else ""
    return link(here.to_target(target), target.title) + words


def _loose_values(here: Here, procedure: Procedure, made: tuple[Step, ...]) -> Markup:
    """Write declared torques and readings that no step shows, so that none is lost."""
    shown = {full_id for step in made for full_id, _ in (*step.torques, *step.readings)}
    torques = (here.target("torque", each.value) for each in procedure.torques)
    own = ((f"{procedure.id}/{id_}", each) for id_, each in procedure.readings.items())
    loose = (each.thing for each in torques if each and each.id not in shown)
    return section(
        "uh-values",
        "Values",
        *(plate(here, thing) for thing in loose if isinstance(thing, Fastener)),
        *(reading_line(full_id, each) for full_id, each in own if full_id not in shown),
    )


def _used(here: Here, procedure: Procedure) -> Markup:
    """Pages that lead here, those aside that stand under what comes first and what follows."""
    links = here.site.links
    neighbours = (*links.before[procedure.id], *links.follows[procedure.id])
    known = here.site.manual.procedures
    return used_section(here, "procedure", procedure.id, without=(known[id_] for id_ in neighbours))
