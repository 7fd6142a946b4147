"""One part: its look-alikes, what tells them apart, where it is used."""

from collections.abc import Iterator

from markupsafe import Markup

from underhoist.links import page_address
from underhoist.model import Part, UnitFamily
from underhoist.pages.authored import purpose
from underhoist.pages.closing import closing
from underhoist.pages.here import Here
from underhoist.pages.html import NOTHING, contents, entry, join, section, table
from underhoist.pages.listing import used_section
from underhoist.pages.quantities import show_span
from underhoist.pages.revisions import changes_section, revision_of, since_of
from underhoist.pages.sheet import Sheet
from underhoist.pages.site import Site

INDEX = ("Parts", "parts/")


def part_sheets(site: Site) -> Iterator[Sheet]:
    """Make the index and every part of the manual."""
    families = [each for each in site.manual.families.values() if each.parts]
    if not families:
        return
    yield _index(site, families)
    for family in families:
        for id_, part in family.parts.items():
            yield _sheet(site, family, id_, part)


def _index(site: Site, families: list[UnitFamily]) -> Sheet:
    here = Here(site, INDEX[1])
    summary = "Parts that are bought, with the look-alikes that do not fit."
    lists = (
        section(
            "uh-group",
            family.title.value,
            contents(
                entry(here.to(f"parts/{family.id}/{id_}/"), part.name.value, look_alikes(part))
                for id_, part in family.parts.items()
            ),
        )
        for family in families
    )
    html = join((purpose(summary), *lists, closing(site)))
    return Sheet(address=INDEX[1], kind="index", title=INDEX[0], summary=summary, html=html)


def look_alikes(part: Part) -> str:
    """How many look-alikes there are, where there are several."""
    count = len(part.variants)
    return f"{count} look-alikes: measure it" if count > 1 else ""


def _sheet(site: Site, family: UnitFamily, id_: str, part: Part) -> Sheet:
    here = Here(site, f"parts/{family.id}/{id_}/")
    name, whose = part.name.value, family.title.value
    several = len(part.variants) > 1
    summary = f"{name} of the {whose}" + (
        ": how to tell its look-alikes apart." if several else "."
    )
    return Sheet(
        address=here.base,
        kind="part",
        title=f"{name}, {whose}",
        summary=summary,
        html=join(
            (
                purpose(summary),
                section(
                    "uh-variants", "Look-alikes" if several else "How to tell it", _variants(part)
                ),
                used_section(here, "part", f"{family.id}/{id_}"),
                changes_section(here, family, f"parts/{id_}"),
                closing(site),
            )
        ),
        trail=(INDEX, (whose, page_address(family.file))),
        revision=revision_of(site, family),
        since=since_of(site, family),
        author=family.author.value if family.author else None,
    )


def _variants(part: Part) -> Markup:
    """One row a look-alike: its tell and everything that can be measured."""
    sizes = dict.fromkeys(size for each in part.variants for size in each.measures)
    rows = (
        (
            each.name.value,
            each.tell.value,
            *(show_span(each.measures[s].value) if s in each.measures else "" for s in sizes),
        )
        for each in part.variants
    )
    heads = ("Which one", "What tells it", *(size.capitalize() for size in sizes))
    return table("uh-table", heads, rows, f"{part.name.value}: which one is it") or NOTHING
