"""From a project to a site that a phone can store: check, pages, phone side, swap."""

from collections.abc import Callable
from pathlib import Path
from typing import Protocol

from attrs import frozen

from underhoist import swap
from underhoist.browser import BrowserReport
from underhoist.check import Checked, FolderChecker
from underhoist.history import History, earlier
from underhoist.lock import held
from underhoist.pages import Site
from underhoist.project import SETTINGS, Unusable, pages_folder
from underhoist.rebuild import DamagedError, KeptBuild
from underhoist.uncollected import uncollected

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
    taken_over: int = 0
    """Pages that are as the build before wrote them."""
    made_anew: int = 0
    """Pages that were made anew."""


def build(  # noqa: PLR0913  # what a build is told
    project: Path,
    site: Path,
    teller: Teller,
    add_phone_side: PhoneSide | None = None,
    since: Path | None = None,
    *,
    afresh: bool = False,
) -> Built:
    """Build the project's site; the old one stays until the new one is complete.

    It is compared with the build whose record or site `since` names, else with the old site.
    What would come out the same is taken over from the build before, or with `afresh` nothing.
    `add_phone_side` is for tests: it may add files, and change none that is there.
    Raises Unusable, also where another build is at work there, NotBuiltError or BrowserError; the
    old site is then as it was.
    """
    try:
        return _built(project, site, teller, add_phone_side, since, afresh=afresh)
    except DamagedError:
        return _built(project, site, teller, add_phone_side, since, afresh=True)


def _built(  # noqa: PLR0913  # what a build is told
    project: Path,
    site: Path,
    teller: Teller,
    add_phone_side: PhoneSide | None,
    since: Path | None,
    *,
    afresh: bool,
) -> Built:
    settings = settings_of(project)
    pages = pages_folder(project)
    teller.stage("Checking the manual")
    kept = KeptBuild(project, site, afresh=afresh, phone=add_phone_side is None)
    with uncollected():
        checked = FolderChecker(pages, kept.read, kept.findings).checked()
    if checked.stops:
        return Built(checked=checked, pages=pages, site=None)
    with held(site):
        made, phone = _swapped_in(settings, checked, site, teller, add_phone_side, since, kept)
    return Built(
        checked=checked,
        pages=pages,
        site=site,
        cross_links=made.links.count,
        calculators=len(made.calculators),
        phone=phone,
        history=made.history,
        taken_over=kept.taken_over,
        made_anew=kept.made_anew,
    )


def _swapped_in(  # noqa: PLR0913, PLR0917  # what a build is told
    settings: Path,
    checked: Checked,
    site: Path,
    teller: Teller,
    add_phone_side: PhoneSide | None,
    since: Path | None,
    kept: KeptBuild,
) -> tuple[Site, BrowserReport | None]:
    """Make the site beside the old one and put it in its place when it is whole."""
    from underhoist.plugin import build_site  # noqa: PLC0415 - slow to import, a check needs it not

    new = swap.fresh(site)
    try:
        teller.stage("Writing the pages")
        before = earlier(site, since) if since else kept.earlier()
        made = build_site(settings, checked, new, lambda _: teller.step(), before, kept)
        swap.mark(new)
        phone = (add_phone_side or kept.add_phone_side)(new, teller.stage)
        swap.swap(site, kept.spare)
        kept.keep()
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
