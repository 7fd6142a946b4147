"""Everything whose uses are told, kind by kind, with the pages that use it."""

import re
from collections.abc import Callable, Iterable, Iterator, Mapping

from attrs import frozen

from underhoist.lexicon import many
from underhoist.links import page_address, word_anchor
from underhoist.model import Manual, Page
from underhoist.pages.fluids import fluids
from underhoist.pages.site import Site
from underhoist.prose import prose


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
    """Find the shop's own words in the texts of all pages but the one that declares them."""
    declared = {name: page for page in site.manual.plain.values() for name in page.words}
    forms = {form: name for name in declared for form in (_plain(many(name)), _plain(name))}
    starts: dict[str, list[tuple[str, ...]]] = {}
    for form in forms:
        parts = tuple(form.split())
        starts.setdefault(parts[0], []).append(parts)
    users: dict[str, list[Page]] = {name: [] for name in declared}
    for page in site.manual.pages():
        for name in _said(page, forms, starts):
            if declared[name] is not page:
                users[name].append(page)
    for name, page in declared.items():
        address = f"{page_address(page.file)}#{word_anchor(name)}"
        yield Thing(word_anchor(name), name, address, tuple(users[name]))


def _said(
    page: Page, forms: Mapping[str, str], starts: Mapping[str, list[tuple[str, ...]]]
) -> Iterable[str]:
    """Name each of our words that a page says, once."""
    text = f"{page.title.value} {page.summary.value} {prose(page.body).words}"
    said = _plain(text).split()
    found: dict[str, None] = {}
    for at, word in enumerate(said):
        for parts in starts.get(word, ()):
            if tuple(said[at : at + len(parts)]) == parts:
                found[forms[" ".join(parts)]] = None
    return found


def _plain(text: str) -> str:
    """Lower the letters, and put one space between words: hyphens and line ends part them too."""
    return " ".join(_WORD.findall(text.casefold()))


_WORD = re.compile(r"[^\W_]+(?:[·'][^\W_]+)*")

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
