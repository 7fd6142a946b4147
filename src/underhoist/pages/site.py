"""What all pages are made from: the checked manual, its links, the calculators, the rules."""

from collections.abc import Container, Mapping
from pathlib import Path
from typing import Self

from attrs import evolve, frozen
from underhoist_calculators import all_calculators
from underhoist_calculators.declare import Calculator

from underhoist import rules
from underhoist.history import Earlier, History, Present, advance, present
from underhoist.links import Links, weave
from underhoist.model import Body, Manual
from underhoist.pages.portraits import painter
from underhoist.rules import Rule


@frozen(kw_only=True)
class Site:
    """Everything a page may ask for."""

    manual: Manual
    folder: Path
    """Where the manual's files are, for drawings and revisions."""
    links: Links
    texts: Mapping[str, Body]
    """The text of each page, by its file. Who looks at another page's text looks here."""
    calculators: Mapping[str, Calculator]
    rules: Mapping[str, Rule]
    name: str
    demo: bool
    """Whether the figures are invented: every page then says so."""
    history: History | None = None
    """What is known of the manual's builds; None where no record is kept, as in a preview."""

    def of(self, manual: Manual, links: Links) -> Self:
        """Return the same site of another manual."""
        return evolve(self, manual=manual, links=links, texts=_texts(manual))


@frozen
class Known:
    """What a build takes over from the one before of all that pages are made from."""

    links: Links
    now: Mapping[str, Present]
    """The pages as they are now, by their key."""
    same: Container[str]
    """Keys of pages that are as the record of the build before has them."""


def make_site(  # noqa: PLR0913  # what a site is made from
    manual: Manual,
    folder: Path,
    *,
    name: str,
    demo: bool = False,
    earlier: Earlier | None = None,
    known: Known | None = None,
) -> Site:
    """Weave the links of a checked manual and gather all that its pages need.

    With `earlier` the build is compared with the one before, and a record is kept of it. What is
    `known` of the links and of the pages is not worked out again.
    """
    links = known.links if known else weave(manual)
    history = None
    if earlier is not None:
        now = known.now if known else present(manual.pages(), painter(manual, links, folder))
        history = advance(earlier, now, name, known.same if known else ())
    return Site(
        manual=manual,
        folder=folder,
        history=history,
        links=links,
        texts=_texts(manual),
        calculators={each.name: each for each in all_calculators()},
        rules={rule.code: rule for rule in rules.ALL},
        name=name,
        demo=demo,
    )


def _texts(manual: Manual) -> dict[str, Body]:
    return {page.file: page.body for page in manual.pages()}
