"""The thin adapter to MkDocs, and the only module that imports it.

MkDocs gives the templates and the files; what stands on the pages comes from
`underhoist.pages`, finished.
"""

# pyright: reportUnknownMemberType=false, reportUnknownVariableType=false
# pyright: reportPrivateUsage=false
# MkDocs' own types are partial; of its pass over all files one step is called by itself.

import logging
import os
import re
from collections.abc import Callable, Iterable
from pathlib import Path

from jinja2 import ChoiceLoader, DictLoader, Environment
from markupsafe import escape
from mkdocs.commands.build import _build_theme_template as write_template
from mkdocs.commands.build import build as mkdocs_build
from mkdocs.commands.build import get_context
from mkdocs.config import load_config
from mkdocs.config.base import Config
from mkdocs.config.config_options import Type
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import Abort, ConfigurationError, PluginError
from mkdocs.plugins import BasePlugin
from mkdocs.structure.files import File, Files
from mkdocs.structure.nav import Navigation
from mkdocs.structure.pages import Page
from mkdocs.utils.templates import TemplateContext

from underhoist import theme
from underhoist.beside import beside
from underhoist.check import Checked, check
from underhoist.history import Earlier, earlier
from underhoist.links import page_address
from underhoist.pages import Sheet, Site, make_site, sheets
from underhoist.policy import policy
from underhoist.rebuild import KeptBuild
from underhoist.search import nothing_known

Make = Callable[[Site], Iterable[Sheet]]

_WHOLE = "whole.html"
"""The template of a page that is there already."""

Told = Callable[[str], None]
"""Is told the address of each page that was written."""


class NotBuiltError(Exception):
    """No site could be made; the text says why."""


class Settings(Config):
    """What the plugin may be told in mkdocs.yml."""

    demo = Type(bool, default=False)
    """Whether the figures are invented: every page then says so."""


class UnderhoistPlugin(BasePlugin[Settings]):
    """Puts the pages of a checked manual in place of what MkDocs would make of its files."""

    checked: Checked | None = None
    """Set by our own build, which has checked already; otherwise the plugin checks."""
    told: Told | None = None
    make: Make | None = None
    """Makes the pages if set: a preview forgives faults, and keeps what it made."""
    kept: KeptBuild | None = None
    """What our own build takes over from the one before; otherwise everything is made."""
    before: Earlier | None = None
    """What our own build knows of earlier builds; otherwise the plugin looks in the old site."""
    site: Site
    sheets: dict[str, Sheet]
    """Finished pages by the file that MkDocs would make them from."""
    nav: Navigation
    env: Environment

    def on_config(self, config: MkDocsConfig) -> MkDocsConfig:
        """Put our templates before the theme's, and leave the Markdown to our own reader."""
        config.theme.dirs.insert(0, str(theme.folder()))
        config.theme.static_templates.update(theme.templates())
        if not config.site_url:
            config.theme.static_templates.discard("sitemap.xml")  # it would hold no addresses
        config.markdown_extensions.clear()
        config.mdx_configs.clear()
        return config

    def on_pre_build(self, *, config: MkDocsConfig) -> None:
        """Check the manual before anything of the old site is touched."""
        folder = Path(config.docs_dir)
        checked = self.checked or check(folder)
        if checked.stops:
            msg = "The check found what stops the build: run `underhoist check` to read it."
            raise PluginError(msg)
        demo, name = bool(self.config.demo), str(config.site_name)
        before = self.before if self.checked else earlier(Path(config.site_dir))
        self.site = make_site(checked.manual, folder, name=name, demo=demo, earlier=before)

    def on_files(self, files: Files, *, config: MkDocsConfig) -> Files:
        """Every page and every card as a generated file; nothing of the theme below."""
        for file in list(files):
            if file.is_documentation_page() or not theme.wants(file.src_uri, self._is_ours(file)):
                files.remove(file)
        make = self.make or (self.kept.sheets if self.kept else sheets)
        made = {sheet.address: sheet for sheet in make(self.site)}
        cards = self.kept.cards(self.site, made) if self.kept else None
        self.sheets = {_source(address): sheet for address, sheet in made.items()}
        others = beside(self.site, made, cards, self.kept.searched if self.kept else nothing_known)
        generated = [
            *((path, "") for path in self.sheets),
            *(self.kept.generated(others) if self.kept else others),
        ]
        for path, content in generated:
            files.append(File.generated(config, path, content=content))
        return files

    def on_nav(self, nav: Navigation, *, config: MkDocsConfig, files: Files) -> Navigation:
        """No tree of all pages: a page's weight must not grow with their number."""
        del config, files
        nav.items.clear()
        self.nav = nav
        return nav

    def on_env(self, env: Environment, *, config: MkDocsConfig, files: Files) -> Environment:
        """Let templates write a page's policy; keep them for pages that are written later."""
        del config, files
        env.globals["policy"] = policy
        whole = DictLoader({_WHOLE: "{{ page.meta.whole }}"})
        env.loader = ChoiceLoader([whole, env.loader] if env.loader else [whole])
        self.env = env
        return env

    def on_page_markdown(
        self, markdown: str, *, page: Page, config: MkDocsConfig, files: Files
    ) -> str:
        """Tell the theme what it must know of the page."""
        del markdown, files
        sheet = self._sheet(page)
        page.meta = _meta(sheet)
        whole = self.kept.html(sheet, _all_settings(config)) if self.kept else None
        if whole is not None:
            page.meta |= {"template": _WHOLE, "whole": whole}
        return ""

    def on_page_content(self, html: str, *, page: Page, config: MkDocsConfig, files: Files) -> str:
        """Return the finished page."""
        del html, config, files
        return self._sheet(page).html

    def on_page_context(
        self, context: TemplateContext, *, page: Page, config: MkDocsConfig, nav: Navigation
    ) -> TemplateContext:
        """Tell who waits that one more page is written."""
        del config, nav
        if self.told is not None:
            self.told(page.url)
        return context

    def on_post_page(self, output: str, *, page: Page, config: MkDocsConfig) -> str:
        """Note the finished page for the next build."""
        del config
        if self.kept is not None:
            self.kept.wrote(self._sheet(page), output)
        return output

    def _sheet(self, page: Page) -> Sheet:
        return self.sheets[page.file.src_uri]

    def _is_ours(self, file: File) -> bool:
        folders = {theme.folder(), self.site.folder}
        return file.src_dir is not None and Path(file.src_dir) in folders


def _source(address: str) -> str:
    """Return the file from which MkDocs would make a page at this address."""
    stem = address.rstrip("/")
    return f"{stem}/index.md" if stem else "index.md"


def _all_settings(config: MkDocsConfig) -> str:
    """Return all settings that a page comes out by; "" where not all stand in their file."""
    if list(config.plugins) != ["underhoist"] or config.hooks or config.theme.custom_dir:
        return ""
    text = Path(config.config_file_path or "").read_text(encoding="utf-8")
    return "" if re.search(r"\bINHERIT\b|!\w", text) else text


def _meta(sheet: Sheet) -> dict[str, object]:
    """Texts are escaped here: MkDocs' templates do not escape."""
    return {
        "title": escape(sheet.title),
        "kind": sheet.kind,
        "summary": escape(sheet.summary),
        "trail": [{"title": escape(title), "url": address} for title, address in sheet.trail],
        "revision": sheet.revision,
        "since": sheet.since,
        "author": escape(sheet.author) if sheet.author else None,
        "data": sheet.data,  # JSON, safe as it is
    }


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
    site = _renewed(settings, checked, into, told, before, kept) if kept else None
    return site or _built(settings, checked, into, told, None, before, kept)[0].site


def _renewed(  # noqa: PLR0913, PLR0917  # what a build is told
    settings: Path,
    checked: Checked,
    into: Path,
    told: Told,
    before: Earlier | None,
    kept: KeptBuild,
) -> Site | None:
    """Link the old site and write what differs, without MkDocs' pass over every file.

    None where more than pages differs from the build before: then all has to be written.
    """
    try:
        plugin, config = _configured(settings, into)
    except (Abort, ConfigurationError, PluginError):  # the whole build says what is wrong
        return None
    folder, alike = Path(config.docs_dir), _all_settings(config) if _is_plain(config) else ""
    if any(_is_left_out(page_address(page.file)) for page in checked.manual.pages()):
        return None
    old = kept.old_site(alike, checked.manual, folder, into)
    if old is None:
        return None
    name, demo = str(config.site_name), bool(plugin.config.demo)
    site = make_site(checked.manual, folder, name=name, demo=demo, earlier=before)
    made = {sheet.address: sheet for sheet in kept.sheets(site)}
    plugin.told = told
    press = _Press(plugin, config)
    for address, sheet in made.items():
        if kept.took(sheet, old):
            told(address)
        else:
            html = press.html(sheet)
            old.put(f"{address}index.html", kept.wrote(sheet, html))
    others = beside(site, made, kept.cards(site, made), kept.searched)
    for path, text in kept.generated(others):
        old.put(path, text.encode("utf-8"))
    press.sitemap(made)
    return site


def _is_plain(config: MkDocsConfig) -> bool:
    """Whether every page that is made is written, each into a folder of its own."""
    others = config.exclude_docs or config.draft_docs or config.extra_templates
    return bool(config.use_directory_urls) and not others


def _is_left_out(address: str) -> bool:
    """Whether MkDocs leaves out what stands at such an address."""
    return address.startswith("templates/") or any(part[:1] == "." for part in address.split("/"))


def _built(  # noqa: PLR0913, PLR0917  # what the plugin must be told
    settings: Path,
    checked: Checked,
    into: Path,
    told: Told | None,
    make: Make | None,
    before: Earlier | None = None,
    kept: KeptBuild | None = None,
) -> tuple[UnderhoistPlugin, MkDocsConfig]:
    lines = _quiet()
    try:
        plugin, config = _configured(settings, into)
        plugin.checked, plugin.told, plugin.make = checked, told, make
        plugin.before, plugin.kept = before, kept
        mkdocs_build(config)
    except (Abort, ConfigurationError, PluginError) as error:
        raise NotBuiltError("\n".join([str(error), *lines])) from None
    return plugin, config


def _configured(settings: Path, into: Path) -> tuple[UnderhoistPlugin, MkDocsConfig]:
    config = _config(settings, into)
    plugin = config.plugins.get("underhoist")
    if not isinstance(plugin, UnderhoistPlugin):
        msg = f"{settings}: the list of plugins lacks underhoist. Add the line `- underhoist`."
        raise NotBuiltError(msg)
    return plugin, config


def site_of(settings: Path, checked: Checked, before: Earlier | None) -> tuple[Site, str]:
    """Return what a checked manual's pages are made from, and the address in its settings.

    The address is "" where they give none. Raises NotBuiltError where the settings are refused.
    """
    lines = _quiet()
    try:
        config = _config(settings, settings.parent / "site")
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
        self._press = _Press(self._plugin, config)

    @property
    def site(self) -> Site:
        """What the pages were made from."""
        return self._plugin.site

    def html(self, sheet: Sheet) -> str:
        """Return the whole page."""
        return self._press.html(sheet)


class _Press:
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
        page = Page(None, File.generated(config, _source(sheet.address), content=""), config)
        page.markdown, page.content, page.meta = "", sheet.html, _meta(sheet)
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
        files = Files([File.generated(config, _source(each), content="") for each in addresses])
        for file in files:
            Page(None, file, config)
        write_template(name, self._plugin.env, files, config, nav)


def _config(settings: Path, into: Path) -> MkDocsConfig:
    os.environ["NO_MKDOCS_2_WARNING"] = "1"  # a notice of the theme's makers, at every build
    return load_config(str(settings), site_dir=str(into))


def _quiet() -> list[str]:
    """Keep MkDocs from printing; its warnings are returned as they come."""
    lines: list[str] = []
    keeper = logging.Handler(logging.WARNING)
    keeper.emit = lambda record: lines.append(record.getMessage())
    for name in ("mkdocs", "properdocs"):  # the second is what its maintained fork is called
        logger = logging.getLogger(name)
        logger.handlers[:] = [keeper]
        logger.propagate = False
    return lines
