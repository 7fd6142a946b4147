"""Every fluid by its specification: which families want or accept it, and where it is used."""

from collections.abc import Iterator, Mapping
from hashlib import sha256

from attrs import field, frozen
from markdown.extensions.toc import slugify
from markupsafe import Markup

from underhoist.model import Manual, Page, UnitFamily
from underhoist.pages.authored import purpose
from underhoist.pages.closing import closing
from underhoist.pages.here import Here
from underhoist.pages.html import contents, entry, join, link, section
from underhoist.pages.listing import pages_list, used_pages
from underhoist.pages.sheet import Sheet
from underhoist.pages.site import Site

INDEX = ("Fluids", "fluids/")


@frozen
class Fluid:
    """A specification and the pages that name it."""

    name: str
    slug: str
    built_for: list[UnitFamily] = field(factory=list[UnitFamily])
    accepted_by: list[UnitFamily] = field(factory=list[UnitFamily])
    refused_by: list[UnitFamily] = field(factory=list[UnitFamily])
    """Families whose fluid it must never be mixed with."""
    users: list[Page] = field(factory=list[Page])
    """Procedures that use it, and hazards that it brings."""

    @property
    def pages(self) -> tuple[Page, ...]:
        """Every page that names it, each once."""
        return tuple({page.file: page for page in self._all()}.values())

    def _all(self) -> Iterator[Page]:
        yield from self.built_for
        yield from self.accepted_by
        yield from self.refused_by
        yield from self.users


def fluids(manual: Manual) -> dict[str, Fluid]:
    """Gather the fluids of a manual by their slugs; only capitals apart, two names are one."""
    found: dict[str, Fluid] = {}

    def of(name: str) -> Fluid:
        return found.setdefault(slug_of(name), Fluid(name, slug_of(name)))

    for family in manual.families.values():
        of(family.fluid.specification.value).built_for.append(family)
        for each in family.fluid.accepts:
            of(each.value).accepted_by.append(family)
        for each in family.fluid.never_with:
            of(each.value).refused_by.append(family)
    for procedure in manual.procedures.values():
        for each in procedure.fluids:
            of(each.value).users.append(procedure)
    for hazard in manual.hazards.values():
        for each in hazard.required_when.fluids:
            of(each.value).users.append(hazard)
    return found


def slug_of(name: str) -> str:
    """Make an address of a name; where signs are lost that may tell two fluids apart, a code."""
    stem = slugify(name, "-")
    if stem == "-".join(name.casefold().split()):
        return stem
    return f"{stem}-{sha256(name.casefold().encode()).hexdigest()[:4]}".strip("-")


def fluid_link(here: Here, name: str) -> Markup:
    """Link a fluid to its page."""
    return link(here.to(f"{INDEX[1]}{slug_of(name)}/"), name)


def fluid_sheets(site: Site) -> Iterator[Sheet]:
    """Make the index and every fluid of the manual."""
    found = fluids(site.manual)
    yield _index(site, found)
    for fluid in found.values():
        yield _sheet(site, fluid)


def _index(site: Site, found: Mapping[str, Fluid]) -> Sheet:
    here = Here(site, INDEX[1])
    summary = "Every fluid by its specification, and the units that want it."
    entries = contents(
        entry(here.to(f"{INDEX[1]}{each.slug}/"), each.name, _summary(each))
        for each in sorted(found.values(), key=lambda each: each.name.casefold())
    )
    none = Markup("<p>There are none in this manual yet.</p>")
    html = join((purpose(summary), entries or none, closing(site)))
    return Sheet(address=INDEX[1], kind="index", title=INDEX[0], summary=summary, html=html)


def _summary(fluid: Fluid) -> str:
    sides = {
        "Wanted by": fluid.built_for,
        "Accepted by": fluid.accepted_by,
        "Never to be mixed with the fluid of": fluid.refused_by,
    }
    words = (
        f"{words} {', '.join(each.title.value for each in families)}"
        for words, families in sides.items()
        if families
    )
    return ". ".join(words) or "No unit family of this manual names it"


def _sheet(site: Site, fluid: Fluid) -> Sheet:
    here = Here(site, f"{INDEX[1]}{fluid.slug}/")
    summary = f"{_summary(fluid)}."
    return Sheet(
        address=here.base,
        kind="fluid",
        title=fluid.name,
        summary=summary,
        html=join(
            (
                purpose(summary),
                section("uh-families", "Units built for it", pages_list(here, fluid.built_for)),
                section("uh-families", "Units that accept it", pages_list(here, fluid.accepted_by)),
                section(
                    "uh-families",
                    "Never into these units, and never mixed with their fluid",
                    pages_list(here, fluid.refused_by),
                ),
                used_pages(here, "fluid", fluid.slug, fluid.users),
                closing(site),
            )
        ),
        trail=(INDEX,),
    )
