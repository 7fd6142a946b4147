"""Everything whose uses are told, kind by kind, with the pages that use it."""

from collections.abc import Callable, Iterable, Iterator, Mapping

from attrs import frozen

from underhoist.links import page_address, word_anchor
from underhoist.model import Manual, Page
from underhoist.pages.fluids import fluids
from underhoist.pages.site import Site


@frozen
class Thing:
    """Something that pages use: how it is called, where it lives, who uses it."""

    id: str
    name: str
    address: str
    users: tuple[Page, ...]


def things(site: Site, scheme: str) -> list[Thing]:
    """Give every thing of a scheme, in the order of the alphabet."""
    return sorted(_FINDERS[scheme](site), key=lambda each: (each.name.casefold(), each.id))


def _pages(
    scheme: str, pages: Callable[[Manual], Mapping[str, Page]]
) -> Callable[[Site], Iterable[Thing]]:
    """Find the pages of one kind."""

    def find(site: Site) -> Iterator[Thing]:
        for id_, page in pages(site.manual).items():
            users = site.links.used_by(scheme, id_)
            yield Thing(id_, page.title.value, page_address(page.file), users)

    return find


def _parts(site: Site) -> Iterator[Thing]:
    for family in site.manual.families.values():
        for id_, part in family.parts.items():
            yield _owned(site, "part", family, id_, part.name.value)


def _torques(site: Site) -> Iterator[Thing]:
    for owner in (*site.manual.families.values(), *site.manual.procedures.values()):
        for id_, fastener in owner.fasteners.items():
            yield _owned(site, "torque", owner, id_, fastener.name.value)


def _owned(site: Site, scheme: str, owner: Page, id_: str, name: str) -> Thing:
    full_id = f"{owner.id}/{id_}"
    users = site.links.used_by(scheme, full_id)
    return Thing(full_id, f"{name}, {owner.title.value}", f"{scheme}s/{full_id}/", users)


def _fluids(site: Site) -> Iterator[Thing]:
    for fluid in fluids(site.manual).values():
        yield Thing(fluid.slug, fluid.name, f"fluids/{fluid.slug}/", fluid.pages)


def _calculators(site: Site) -> Iterator[Thing]:
    for name, calculator in site.calculators.items():
        users = site.links.used_by("calc", name)
        yield Thing(name, calculator.title, f"calculators/{name}/", users)


def _words(site: Site) -> Iterator[Thing]:
    """Give the shop's own words with the pages that say them, but for the one that declares it."""
    declared = {name: page for page in site.manual.plain.values() for name in page.words}
    users: dict[str, list[Page]] = {name: [] for name in declared}
    for page in site.manual.pages():
        for name in site.links.says[page.file]:
            if declared[name].file != page.file:
                users[name].append(page)
    for name, page in declared.items():
        address = f"{page_address(page.file)}#{word_anchor(name)}"
        yield Thing(word_anchor(name), name, address, tuple(users[name]))


_FINDERS: Mapping[str, Callable[[Site], Iterable[Thing]]] = {
    "tool": _pages("tool", lambda manual: manual.tools),
    "part": _parts,
    "torque": _torques,
    "hazard": _pages("hazard", lambda manual: manual.hazards),
    "fluid": _fluids,
    "fault": _pages("fault", lambda manual: manual.faults),
    "procedure": _pages("procedure", lambda manual: manual.procedures),
    "family": _pages("family", lambda manual: manual.families),
    "calc": _calculators,
    "word": _words,
}
