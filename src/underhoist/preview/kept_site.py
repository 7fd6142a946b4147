"""The previewed site on the disk: built once, then kept in step with the manual page by page."""

from collections.abc import Callable, Iterable, Iterator
from functools import partial
from pathlib import Path
from shutil import copyfile

from attrs import evolve

from underhoist.beside import beside
from underhoist.checker import Checked
from underhoist.drafting.shown import shown as as_far_as_it_goes
from underhoist.links import page_address
from underhoist.model import Manual, Page
from underhoist.pages import Sheet, Site, make_site
from underhoist.pages.every import Maker, makers
from underhoist.pages.kinds import kind_of
from underhoist.plugin import PageWriter
from underhoist.rebuild import Batch, Keeper
from underhoist.source import is_page


class KeptSite:
    """A site in a folder, and what its pages were made from."""

    def __init__(self, settings: Path, manual: Manual, root: Path) -> None:
        """Build the manual's site into the folder. Raises NotBuiltError."""
        self.root = root
        self._keeper = Keeper[Site, Sheet](_forgiving, forgiving=True)
        self._writer = PageWriter(settings, Checked(manual, ()), root, self._all)
        self._site = self._writer.site
        self._beside_is_old = False

    def renew(self, manual: Manual, touched: frozenset[str]) -> Iterator[frozenset[str]]:
        """Write what the changed manual shows otherwise; yield the addresses after each batch.

        The first batch is about the touched files, which are paths in the manual's folder.
        """
        old = self._site
        self._site = make_site(manual, old.folder, name=old.name, demo=old.demo)
        self._beside_is_old = True
        self._copy(file for file in touched if not is_page(file))
        for batch in self._keeper.renew(self._site, touched):
            yield self._write(batch)

    @property
    def failed(self) -> frozenset[str]:
        """The generated pages that could not be made, by the names that `every` has for them."""
        return self._keeper.failed

    def html(self, sheet: Sheet) -> str:
        """Return a whole page that is no part of the manual."""
        return self._writer.html(sheet)

    def write_beside(self) -> bool:
        """Write the files beside the pages if they are old; return whether they were."""
        was_old, self._beside_is_old = self._beside_is_old, False
        if was_old:
            for path, text in beside(self._site, self._keeper.things):
                write_changed(self.root / path, text)
        return was_old

    def _all(self, site: Site) -> Iterable[Sheet]:
        for _ in self._keeper.renew(site):
            pass
        return self._keeper.things.values()

    def _write(self, batch: Batch[Sheet]) -> frozenset[str]:
        for address in batch.gone:
            _delete(self.root / address / "index.html", self.root)
        changed = {
            sheet.address
            for sheet in batch.made
            if write_changed(self.root / sheet.address / "index.html", self._writer.html(sheet))
        }
        return frozenset({*changed, *batch.gone})

    def _copy(self, files: Iterable[str]) -> None:
        """Put changed drawings and the like in place."""
        for file in files:
            source, copy = self._site.folder / file, self.root / file
            if source.is_file():
                copy.parent.mkdir(parents=True, exist_ok=True)
                copyfile(source, copy)
            else:
                _delete(copy, self.root)


def write_changed(path: Path, text: str) -> bool:
    """Write the text if the file holds another; return whether it did."""
    data = text.encode("utf-8", errors="xmlcharrefreplace")
    if path.is_file() and path.read_bytes() == data:
        return False
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(data)
    return True


def _delete(path: Path, root: Path) -> None:
    """Delete the file, and the folders above it that are then empty."""
    path.unlink(missing_ok=True)
    for folder in path.parents:
        if folder == root or not folder.is_dir() or any(folder.iterdir()):
            return
        folder.rmdir()


def _forgiving(site: Site) -> Iterator[Maker]:
    """Give what makes each page; one whose facts do not suffice comes out as its text."""
    pages = {page.file: page for page in site.manual.pages()}
    for maker in makers(site.manual):
        page = pages.get(maker.name)
        yield evolve(maker, make=partial(_tried, maker.make, page)) if page else maker


def _tried(make: Callable[[Site], Iterable[Sheet]], page: Page, site: Site) -> Iterable[Sheet]:
    """Pages are made for a manual without faults; this one may have any, and findings name them."""
    try:
        return tuple(make(site))
    except Exception:
        return (
            Sheet(
                address=page_address(page.file),
                kind=kind_of(page),
                title=page.title.value,
                summary=page.summary.value,
                html=as_far_as_it_goes(site, page),
            ),
        )
