"""From a project to a site that a phone can store: check, pages, phone side, swap."""

from collections.abc import Callable
from pathlib import Path
from typing import Protocol

from attrs import frozen

from underhoist import swap
from underhoist.browser import BrowserReport, install
from underhoist.check import Checked, check
from underhoist.history import History, earlier
from underhoist.lock import held
from underhoist.pages import Site
from underhoist.project import SETTINGS, Unusable, pages_folder

PhoneSide = Callable[[Path, Callable[[str], None]], BrowserReport | None]
"""Adds the phone side to a new site, telling each stage."""


class Teller(Protocol):
    """Is told how far the build is."""

    def stage(self, words: str, steps: int | None = None) -> None:
        """Begin a new stage, of so many steps where that is known."""
        ...

    def step(self) -> None:
        """Count one step of the stage as done."""
        ...


@frozen(kw_only=True)
class Built:
    """What a build came to; without `site` the check stopped it and nothing was touched."""

    checked: Checked
    pages: Path
    """The folder of the manual's pages."""
    site: Path | None
    cross_links: int = 0
    calculators: int = 0
    phone: BrowserReport | None = None
    history: History | None = None
    """What is different from the build before."""


def phone_side(site: Path, tell: Callable[[str], None]) -> BrowserReport:
    """Add the phone side as it is published: runtime, fonts, offline store."""
    return install(site, progress=tell)


def build(
    project: Path,
    site: Path,
    teller: Teller,
    add_phone_side: PhoneSide = phone_side,
    since: Path | None = None,
) -> Built:
    """Build the project's site; the old one stays until the new one is complete.

    It is compared with the build whose record or site `since` names, else with the old site.
    Raises Unusable, also where another build is at work there, NotBuiltError or BrowserError; the
    old site is then as it was.
    """
    settings = settings_of(project)
    pages = pages_folder(project)
    teller.stage("Checking the manual")
    checked = check(pages)
    if checked.stops:
        return Built(checked=checked, pages=pages, site=None)
    with held(site):
        made, phone = _swapped_in(settings, checked, site, teller, add_phone_side, since)
    return Built(
        checked=checked,
        pages=pages,
        site=site,
        cross_links=made.links.count,
        calculators=len(made.calculators),
        phone=phone,
        history=made.history,
    )


def _swapped_in(  # noqa: PLR0913, PLR0917  # what a build is told
    settings: Path,
    checked: Checked,
    site: Path,
    teller: Teller,
    add_phone_side: PhoneSide,
    since: Path | None,
) -> tuple[Site, BrowserReport | None]:
    """Make the site beside the old one and put it in its place when it is whole."""
    from underhoist.plugin import build_site  # noqa: PLC0415 - slow to import, a check needs it not

    new = swap.fresh(site)
    try:
        teller.stage("Writing the pages")
        before = earlier(site, since)
        made = build_site(settings, checked, new, lambda _: teller.step(), before)
        swap.mark(new)
        phone = add_phone_side(new, teller.stage)
        swap.swap(site)
    finally:
        swap.drop(site)
    return made, phone


def settings_of(project: Path) -> Path:
    """Find the settings of a project; raises Unusable where the folder is not one."""
    found = next((project / name for name in SETTINGS if (project / name).is_file()), None)
    if found is None:
        msg = f"{project}: there is no mkdocs.yml here, so it is not known what to build."
        raise Unusable(msg)
    return found
