"""A whole site, and single pages as it has them."""

# pyright: reportUnknownMemberType=false, reportUnknownVariableType=false
# MkDocs' own types are partial.

from pathlib import Path

from mkdocs.commands.build import build as mkdocs_build
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import Abort, ConfigurationError, PluginError

from underhoist.check import Checked
from underhoist.history import Earlier
from underhoist.pages import Sheet, Site, make_site
from underhoist.plugin.adapter import Make, Told, UnderhoistPlugin, configured
from underhoist.plugin.again import renewed
from underhoist.plugin.press import Press
from underhoist.plugin.settings import NotBuiltError, load, quiet
from underhoist.rebuild import KeptBuild


def build_site(  # noqa: PLR0913, PLR0917  # what the plugin must be told
    settings: Path,
    checked: Checked,
    into: Path,
    told: Told,
    before: Earlier | None = None,
    kept: KeptBuild | None = None,
) -> Site:
    """Build the checked manual of a project into a folder; raises NotBuiltError.

    Without `before` no record is kept and nothing compared, without `kept` nothing taken over.
    """
    site = renewed(settings, checked, into, told, before, kept) if kept else None
    return site or _built(settings, checked, into, told, None, before, kept)[0].site


def _built(  # noqa: PLR0913, PLR0917  # what the plugin must be told
    settings: Path,
    checked: Checked,
    into: Path,
    told: Told | None,
    make: Make | None,
    before: Earlier | None = None,
    kept: KeptBuild | None = None,
) -> tuple[UnderhoistPlugin, MkDocsConfig]:
    lines = quiet()
    try:
        plugin, config = configured(settings, into)
        plugin.checked, plugin.told, plugin.make = checked, told, make
        plugin.before, plugin.kept = before, kept
        mkdocs_build(config)
    except (Abort, ConfigurationError, PluginError) as error:
        raise NotBuiltError("\n".join([str(error), *lines])) from None
    return plugin, config


def site_of(settings: Path, checked: Checked, before: Earlier | None) -> tuple[Site, str]:
    """Return what a checked manual's pages are made from, and the address in its settings.

    The address is "" where they give none. Raises NotBuiltError where the settings are refused.
    """
    lines = quiet()
    try:
        config = load(settings, settings.parent / "site")
    except (Abort, ConfigurationError) as error:
        raise NotBuiltError("\n".join([str(error), *lines])) from None
    plugin = config.plugins.get("underhoist")
    demo = isinstance(plugin, UnderhoistPlugin) and bool(plugin.config.demo)
    name, folder = str(config.site_name), Path(config.docs_dir)
    site = make_site(checked.manual, folder, name=name, demo=demo, earlier=before)
    return site, config.site_url or ""


class PageWriter:
    """Writes single pages of a site that was built before, just as the build wrote them."""

    def __init__(self, settings: Path, checked: Checked, into: Path, make: Make) -> None:
        """Build the whole site into a folder, its pages made by `make`; raises NotBuiltError."""
        self._plugin, config = _built(settings, checked, into, None, make)
        self._press = Press(self._plugin, config)

    @property
    def site(self) -> Site:
        """What the pages were made from."""
        return self._plugin.site

    def html(self, sheet: Sheet) -> str:
        """Return the whole page."""
        return self._press.html(sheet)
