"""A build after a change: the old site linked, and what differs written."""

from collections.abc import Iterator, Mapping
from pathlib import Path

from mkdocs.exceptions import Abort, ConfigurationError, PluginError

from underhoist.beside import without_cards
from underhoist.check import Checked
from underhoist.history import Earlier
from underhoist.links import page_address
from underhoist.pages import Sheet, Site, make_site
from underhoist.pages.card_data import card_index
from underhoist.pages.revisions import revision_of
from underhoist.plugin.adapter import Told, configured
from underhoist.plugin.press import Press
from underhoist.plugin.settings import all_settings, is_plain
from underhoist.rebuild import KeptBuild, OldSite


def renewed(  # noqa: PLR0913, PLR0917  # what a build is told
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
        plugin, config = configured(settings, into)
    except (Abort, ConfigurationError, PluginError):  # the whole build says what is wrong
        return None
    folder, alike = Path(config.docs_dir), all_settings(config) if is_plain(config) else ""
    if any(_is_left_out(page_address(page.file)) for page in checked.manual.pages()):
        return None
    old = kept.old_site(alike, checked.manual, folder, into)
    if old is None:
        return None
    name, demo = str(config.site_name), bool(plugin.config.demo)
    known = kept.known(checked.manual, folder, before)
    site = make_site(checked.manual, folder, name=name, demo=demo, earlier=before, known=known)
    made = kept.sheets(site)
    plugin.told = told
    press = Press(plugin, config)
    for address in made:
        if kept.took(address, old):
            told(address)
        else:
            html = press.html(made[address])
            old.put(f"{address}index.html", kept.wrote(address, html))
    for path, text in kept.generated(_beside(site, made, kept, old)):
        old.put(path, text.encode("utf-8"))
    old.finish()
    press.sitemap(made)
    return site


def _beside(
    site: Site, made: Mapping[str, Sheet], kept: KeptBuild, old: OldSite
) -> Iterator[tuple[str, str]]:
    """Yield path and text of the files beside the pages, but of cards only those that differ."""
    cards = kept.cards(site, made)
    for address in cards:
        if not kept.took_card(address, old):
            yield address, cards[address].text
    procedures = site.manual.procedures.items()
    yield card_index(site, {id_: revision_of(site, page) for id_, page in procedures})
    yield from without_cards(site, made, kept, kept.lines)


def _is_left_out(address: str) -> bool:
    """Whether MkDocs leaves out what stands at such an address."""
    return address.startswith("templates/") or any(part[:1] == "." for part in address.split("/"))
