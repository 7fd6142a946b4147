"""What all pages are made from: the checked manual, its links, the calculators, the rules."""

from collections.abc import Mapping
from pathlib import Path

from attrs import frozen
from underhoist_calculators import all_calculators
from underhoist_calculators.declare import Calculator

from underhoist import rules
from underhoist.history import Earlier, History, advance, present
from underhoist.links import Links, weave
from underhoist.model import Manual
from underhoist.pages.portraits import painter
from underhoist.rules import Rule


@frozen(kw_only=True)
class Site:
    """Everything a page may ask for."""

    manual: Manual
    folder: Path
    """Where the manual's files are, for drawings and revisions."""
    links: Links
    calculators: Mapping[str, Calculator]
    rules: Mapping[str, Rule]
    name: str
    demo: bool
    """Whether the figures are invented: every page then says so."""
    history: History | None = None
    """What is known of the manual's builds; None where no record is kept, as in a preview."""


def make_site(
    manual: Manual,
    folder: Path,
    *,
    name: str,
    demo: bool = False,
    earlier: Earlier | None = None,
) -> Site:
    """Weave the links of a checked manual and gather all that its pages need.

    With `earlier` the build is compared with the one before, and a record is kept of it.
    """
    links = weave(manual)
    history = None
    if earlier is not None:
        now = present(manual.pages(), painter(manual, links, folder))
        history = advance(earlier, now, name)
    return Site(
        manual=manual,
        folder=folder,
        history=history,
        links=links,
        calculators={each.name: each for each in all_calculators()},
        rules={rule.code: rule for rule in rules.ALL},
        name=name,
        demo=demo,
    )
