"""Pages by the templates, outside of MkDocs' own pass over the files."""

# pyright: reportUnknownMemberType=false, reportUnknownVariableType=false
# pyright: reportPrivateUsage=false
# MkDocs' own types are partial; of its pass over all files one step is called by itself.

from collections.abc import Iterable

from mkdocs.commands.build import _build_theme_template as write_template
from mkdocs.commands.build import get_context
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.structure.files import File, Files
from mkdocs.structure.nav import Navigation
from mkdocs.structure.pages import Page

from underhoist.pages import Sheet
from underhoist.plugin.adapter import UnderhoistPlugin, meta_of, source_of


class Press:
    """Writes pages by the templates, outside of MkDocs' own pass over the files."""

    def __init__(self, plugin: UnderhoistPlugin, config: MkDocsConfig) -> None:
        if not hasattr(plugin, "env"):  # no build has made it ready
            config = config.plugins.on_config(config)
            env = config.theme.get_env()
            config.plugins.on_env(env, config=config, files=Files([]))
            plugin.nav = Navigation([], [])
        self._plugin, self._config = plugin, config

    def html(self, sheet: Sheet) -> str:
        """Return the whole page."""
        config, nav = self._config, self._plugin.nav
        page = Page(None, File.generated(config, source_of(sheet.address), content=""), config)
        page.markdown, page.content, page.meta = "", sheet.html, meta_of(sheet)
        context = config.plugins.on_page_context(
            get_context(nav, [], config, page), page=page, config=config, nav=nav
        )
        html = self._plugin.env.get_template("main.html").render(context)
        return config.plugins.on_post_page(html, page=page, config=config)

    def sitemap(self, addresses: Iterable[str]) -> None:
        """Write the list of pages for those who gather the web, if the site has an address."""
        config, nav = self._config, self._plugin.nav
        name = "sitemap.xml"
        if name not in config.theme.static_templates:
            return
        files = Files([File.generated(config, source_of(each), content="") for each in addresses])
        for file in files:
            Page(None, file, config)
        write_template(name, self._plugin.env, files, config, nav)
