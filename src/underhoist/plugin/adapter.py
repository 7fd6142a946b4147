"""What MkDocs asks while it builds: our pages in place of what it would make of the files."""

# pyright: reportUnknownMemberType=false, reportUnknownVariableType=false
# pyright: reportMissingTypeStubs=false, reportUnknownArgumentType=false
# MkDocs' own types are partial, and the style sheets' minifier has none.

from collections.abc import Callable, Iterable
from pathlib import Path

import rcssmin
from jinja2 import ChoiceLoader, DictLoader, Environment
from markupsafe import escape
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import PluginError
from mkdocs.plugins import BasePlugin
from mkdocs.structure.files import File, Files
from mkdocs.structure.nav import Navigation
from mkdocs.structure.pages import Page
from mkdocs.utils.templates import TemplateContext

from underhoist import theme
from underhoist.beside import beside
from underhoist.check import Checked, check
from underhoist.history import Earlier, earlier
from underhoist.pages import Sheet, Site, make_site, sheets
from underhoist.plugin.settings import NotBuiltError, Settings, all_settings, load
from underhoist.policy import policy
from underhoist.rebuild import KeptBuild

Make = Callable[[Site], Iterable[Sheet]]

_WHOLE = "whole.html"
"""The template of a page that is there already."""

Told = Callable[[str], None]
"""Is told the address of each page that was written."""


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
        """Put our templates in the theme's place, and leave the Markdown to our own reader."""
        others = [folder for folder in config.theme.dirs if not theme.is_of_theme(folder)]
        config.theme.dirs[:] = [str(theme.folder()), *others]
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
        known = self.kept.known(checked.manual, folder, before) if self.kept else None
        self.site = make_site(
            checked.manual, folder, name=name, demo=demo, earlier=before, known=known
        )

    def on_files(self, files: Files, *, config: MkDocsConfig) -> Files:
        """Every page and every card as a generated file; nothing of the theme below."""
        for file in list(files):
            if file.is_documentation_page() or not theme.wants(file.src_uri, self._is_ours(file)):
                files.remove(file)
        make = self.make or (self._kept_sheets if self.kept else sheets)
        made = {sheet.address: sheet for sheet in make(self.site)}
        cards = self.kept.cards(self.site, made).values() if self.kept else None
        self.sheets = {source_of(address): sheet for address, sheet in made.items()}
        others = beside(self.site, made, cards, self.kept)
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
        page.meta = meta_of(sheet)
        whole = self.kept.html(sheet, all_settings(config)) if self.kept else None
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
            self.kept.wrote(self._sheet(page).address, output)
        return output

    def on_post_template(
        self, output_content: str, *, template_name: str, config: MkDocsConfig
    ) -> str:
        """Leave comments and blanks out of the style sheets: the first paint waits for them."""
        del config
        is_style = template_name in theme.SHEETS
        return str(rcssmin.cssmin(output_content)) if is_style else output_content

    def _kept_sheets(self, site: Site) -> Iterable[Sheet]:
        return self.kept.sheets(site).values() if self.kept else ()

    def _sheet(self, page: Page) -> Sheet:
        return self.sheets[page.file.src_uri]

    def _is_ours(self, file: File) -> bool:
        folders = {theme.folder(), self.site.folder}
        return file.src_dir is not None and Path(file.src_dir) in folders


def source_of(address: str) -> str:
    """Return the file from which MkDocs would make a page at this address."""
    stem = address.rstrip("/")
    return f"{stem}/index.md" if stem else "index.md"


def meta_of(sheet: Sheet) -> dict[str, object]:
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


def configured(settings: Path, into: Path) -> tuple[UnderhoistPlugin, MkDocsConfig]:
    """Return our plugin and all settings of a project; raises NotBuiltError, or MkDocs' errors."""
    config = load(settings, into)
    plugin = config.plugins.get("underhoist")
    if not isinstance(plugin, UnderhoistPlugin):
        msg = f"{settings}: the list of plugins lacks underhoist. Add the line `- underhoist`."
        raise NotBuiltError(msg)
    return plugin, config
