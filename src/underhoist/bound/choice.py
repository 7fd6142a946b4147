"""Which pages go into one document: all, or those of unit families and procedures."""

import re
from collections.abc import Iterable, Iterator, Mapping
from difflib import get_close_matches
from posixpath import normpath

from attrs import frozen

from underhoist.bound.groups import KINDS
from underhoist.bound.order import in_order
from underhoist.links import page_address
from underhoist.model import Manual, Page
from underhoist.pages import Sheet, Site, sheets
from underhoist.project import Unusable

_THINGS = frozenset({"unit-family", "calculator", "torque", "part", "fluid", "tool", "hazard"})
"""Kinds of pages that come with the page that names them; other pages are chosen themselves."""
_USED = re.compile(r'<section class="uh-used">.*?</section>', re.DOTALL)
"""Who uses a thing does not come with it."""
_LINK = re.compile(r'\shref="([^"#?]+)')


@frozen(kw_only=True)
class Choice:
    """What was asked for; nothing means all."""

    families: tuple[str, ...] = ()
    procedures: tuple[str, ...] = ()
    left_out: tuple[str, ...] = ()
    """Folders of the manual whose pages stay out."""

    @property
    def is_all(self) -> bool:
        """Whether no set was chosen."""
        return not (self.families or self.procedures)


def chosen(site: Site, choice: Choice) -> list[Sheet]:
    """Make the chosen pages, and those of the things that they name, in the order of the choice.

    Raises Unusable where a family, a procedure or a folder is not in the manual.
    """
    _all_known("unit family", choice.families, site.manual.families)
    _all_known("procedure", choice.procedures, site.manual.procedures)
    folders = {page.file.rpartition("/")[0] for page in site.manual.pages()}
    _all_known("folder of pages", choice.left_out, folders)
    return in_order(site.manual, choice.families, choice.procedures, _picked(site, choice))


def _picked(site: Site, choice: Choice) -> list[Sheet]:
    """Return the pages in the order of the site."""
    made = {each.address: each for each in sheets(site) if each.kind in KINDS}
    own = {page_address(page.file): page.file for page in site.manual.pages()}
    kept = {at: each for at, each in made.items() if not _is_in(own.get(at, ""), choice.left_out)}
    if choice.is_all:
        return _present(kept, own)
    wanted = set(_asked(site.manual, choice))
    first = [each for at, each in kept.items() if at in wanted]
    near = [each for each in _named(first, kept) if each.address not in wanted]
    further = _named((each for each in near if each.kind != "unit-family"), kept)
    wanted.update(each.address for each in (*near, *further) if each.kind in _THINGS)
    words = {page_address(each.file) for each in site.manual.plain.values() if each.words}
    others = set(site.manual.families) - _families(site.manual, choice)
    mine = (each for at, each in kept.items() if at in wanted | words)
    return [each for each in mine if not others & set(each.address.split("/"))]


def _present(kept: Mapping[str, Sheet], own: Mapping[str, str]) -> list[Sheet]:
    """Leave lists of all out: a document has its own contents."""
    return [each for at, each in kept.items() if each.kind != "page" or at in own]


def _is_in(file: str, folders: Iterable[str]) -> bool:
    return any(file.startswith(f"{folder}/") for folder in folders)


def _asked(manual: Manual, choice: Choice) -> Iterator[str]:
    """Yield the addresses of what was asked for by name."""
    pages: list[Page] = [manual.procedures[id_] for id_ in choice.procedures]
    pages += [manual.families[id_] for id_ in choice.families]
    for each in (*manual.procedures.values(), *manual.faults.values()):
        ids = {id_.value for id_ in each.unit_family}
        if choice.families and (ids & {*choice.families, "any"} or not ids):
            pages.append(each)
    yield from (page_address(page.file) for page in pages)


def _families(manual: Manual, choice: Choice) -> set[str]:
    """Return the unit families that were asked for, and those of the chosen procedures."""
    of = (manual.procedures[id_].unit_family for id_ in choice.procedures)
    return {*choice.families, *(each.value for ids in of for each in ids)}


def _named(pages: Iterable[Sheet], kept: Mapping[str, Sheet]) -> Iterator[Sheet]:
    """Yield the pages that these link to."""
    for page in pages:
        for link in _LINK.findall(_USED.sub("", page.html)):
            path = normpath(f"/{page.address}{link}").strip("/")
            if found := kept.get(f"{path}/"):
                yield found


def _all_known(what: str, given: Iterable[str], known: Iterable[str]) -> None:
    names = sorted(filter(None, known))
    for each in given:
        if each not in names:
            near = get_close_matches(each, names, 1)
            hint = f"Did you mean {near[0]}?" if near else f"There are: {', '.join(names)}."
            raise Unusable(f"{each}: the manual has no {what} of that name. {hint}")
