"""References by scheme: found in a body, resolved to the thing they name."""

from collections.abc import Iterator, Mapping
from functools import lru_cache
from typing import cast

from attrs import frozen

from underhoist.model import (
    Body,
    Fastener,
    Fault,
    Manual,
    Page,
    Part,
    Procedure,
    Reading,
    UnitFamily,
)
from underhoist.place import Place
from underhoist.prose import Link, prose


@frozen
class Reference:
    """`<torque:band-seat>` or `[seat the band](torque:band-seat)` in a body."""

    scheme: str
    id: str
    link: Link

    @property
    def label(self) -> str:
        """Its own words, empty for the short form."""
        return self.link.label

    @property
    def offset(self) -> int:
        """Where it begins in the body's text."""
        return self.link.offset

    @property
    def at(self) -> Place:
        """Where it stands in its file."""
        return self.link.at


@frozen
class Target:
    """What a reference names. `id` is the full one, such as kestrel-3/band-seat."""

    scheme: str
    id: str
    title: str
    thing: object


def find(body: Body, file: str) -> Iterator[Reference]:
    """Every reference in the body, in the order of the text."""
    return iter(_parted(body, file)[0])


def other_links(body: Body, file: str) -> tuple[Link, ...]:
    """Every link in the body that is no reference, in the order of the text."""
    return _parted(body, file)[1]


@lru_cache(maxsize=4096)
def _parted(body: Body, file: str) -> tuple[tuple[Reference, ...], tuple[Link, ...]]:
    """Part a body's links into references and others, which are few."""
    references: list[Reference] = []
    others: list[Link] = []
    for link in prose(body).links(file):
        written, colon, name = link.target.partition(":")
        if colon and (scheme := written.lower()) in SCHEMES:
            references.append(Reference(scheme, name, link))
        else:
            others.append(link)
    return tuple(references), tuple(others)


def resolve(manual: Manual, page: Page, reference: Reference) -> Target | None:
    """Return the one thing that the reference names on this page, None for none or several."""
    found = matches(manual, page, reference.scheme, reference.id)
    return found[0] if len(found) == 1 else None


def matches(manual: Manual, page: Page, scheme: str, name: str) -> list[Target]:
    """Everything that the name can mean on this page: two where two of its families know it."""
    if scheme in PAGES:
        return _target(scheme, getattr(manual, PAGES[scheme]), name)
    if scheme == "calc":
        return _target("calc", _calculators(), name)
    attribute, groups = OWNED[scheme]
    owner, slash, short = name.partition("/")
    if slash:
        owners = [getattr(manual, group).get(owner) for group in groups]
        scopes = iter([[each for each in owners if each]])
    else:
        short, scopes = name, _scopes(manual, page)
    for scope in scopes:
        owned = ((each, _things(each, attribute)) for each in scope)
        found = [
            Target(scheme, f"{each.id}/{short}", _title(things[short]), things[short])
            for each, things in owned
            if short in things
        ]
        if found:
            return found
    return []


def candidates(manual: Manual, page: Page, scheme: str) -> list[str]:
    """Names that resolve on this page, the nearest first, each in its shortest form."""
    if scheme in PAGES:
        return list(getattr(manual, PAGES[scheme]))
    if scheme == "calc":
        return list(_calculators())
    attribute, groups = OWNED[scheme]
    near = [
        name
        for scope in _scopes(manual, page)
        for each in scope
        for name in _things(each, attribute)
    ]
    owners = [each for group in groups for each in getattr(manual, group).values()]
    far = [f"{each.id}/{name}" for each in owners for name in _things(each, attribute)]
    return list(dict.fromkeys([*near, *far]))


def families_of(manual: Manual, page: Page) -> list[UnitFamily]:
    """Return the unit families a page is for: its own, those it names, none where it says any."""
    if isinstance(page, UnitFamily):
        return [page]
    if isinstance(page, Procedure | Fault):
        return [
            manual.families[each.value]
            for each in page.unit_family
            if each.value in manual.families
        ]
    return []


def _things(owner: Page, attribute: str) -> Mapping[str, object]:
    """Return what the page owns by id; a procedure's `parts` are only a list of names."""
    things: object = getattr(owner, attribute, None)
    return cast("Mapping[str, object]", things) if isinstance(things, Mapping) else {}


def _scopes(manual: Manual, page: Page) -> Iterator[list[Page]]:
    """Who may own a short name: the page itself, then its families, all of the same standing."""
    yield [page]
    yield list[Page](families_of(manual, page))


def _target(scheme: str, things: Mapping[str, object], name: str) -> list[Target]:
    """Return the thing of this name as a list of one, or no thing."""
    thing = things.get(name)
    return [] if thing is None else [Target(scheme, name, _title(thing), thing)]


def _title(thing: object) -> str:
    if isinstance(thing, Page):
        return thing.title.value
    if isinstance(thing, Fastener | Part | Reading):
        return thing.name.value
    return str(getattr(thing, "title", thing))


def _calculators() -> dict[str, object]:
    from underhoist_calculators import all_calculators  # noqa: PLC0415  # only calc: needs them

    return {each.name: each for each in all_calculators()}


PAGES = {
    "procedure": "procedures",
    "tool": "tools",
    "hazard": "hazards",
    "family": "families",
    "fault": "faults",
}
"""Schemes that name a page, with the manual's group of such pages."""

OWNED = {
    "torque": ("fasteners", ("families", "procedures")),
    "part": ("parts", ("families",)),
    "reading": ("readings", ("procedures",)),
}
"""Schemes that name something a page owns: its attribute, and the groups of pages that have it."""

SCHEMES = frozenset({*PAGES, *OWNED, "calc"})
"""The words before the colon that make a link a reference."""
