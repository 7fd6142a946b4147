"""From a project to what its pages are made from, as a build would take it."""

from pathlib import Path

from attrs import frozen

from underhoist.build import settings_of
from underhoist.check import Checked, check
from underhoist.history import earlier
from underhoist.pages import Site
from underhoist.project import pages_folder


@frozen(kw_only=True)
class Source:
    """A project that was checked; without `site` the check found what stops."""

    checked: Checked
    folder: Path
    """Where the manual's pages are."""
    site: Site | None
    address: str = ""
    """Where the settings say that the site is served, "" where they do not say."""


def source(project: Path) -> Source:
    """Check the project; the record of its built site, if there is one, gives the dates.

    Raises Unusable or NotBuiltError.
    """
    settings = settings_of(project)
    folder = pages_folder(project)
    checked = check(folder)
    if checked.stops:
        return Source(checked=checked, folder=folder, site=None)
    from underhoist.plugin import site_of  # noqa: PLC0415 - slow to import, a check needs it not

    built = project / "site"
    before = earlier(built) if built.is_dir() else None
    site, address = site_of(settings, checked, before)
    return Source(checked=checked, folder=folder, site=site, address=address)
