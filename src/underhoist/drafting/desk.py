"""The desk on which a draft lies among the manual's pages: what is wrong with it, how it looks."""

from pathlib import Path
from typing import TypedDict

from attrs import evolve
from markupsafe import Markup

from underhoist.checker import Checker
from underhoist.drafting.shown import PART, shown
from underhoist.drafting.sources import Size, Sources
from underhoist.drafting.told import Name, Told, names, told
from underhoist.links import page_address, weave
from underhoist.model import Draft, Fault, Manual, Page
from underhoist.pages import make_site


class Looked(TypedDict):
    """What was found in the draft, and what the draft causes in other pages."""

    own: list[Told]
    elsewhere: list[Told]


class Shown(TypedDict):
    """The page as HTML, and the address that its links count from."""

    html: str
    address: str


class Desk:
    """One manual with one draft laid over it at a time."""

    def __init__(self, sources: Sources, folder: Path) -> None:
        """Put the manual's files into `folder`, which is empty: pages are made from a folder."""
        self.sources = sources
        self.folder = folder
        self._checker = Checker(sources.pages, sources.drawings)
        self._draft: str | None = None
        for file, text in sources.pages.items():
            self._write(file, text)
        for file, size in sources.drawings.items():
            self._write(file, _frame(size))
        self._checked = self._checker.checked()
        self._known = frozenset(self._checked.findings)
        self._site = make_site(self._checked.manual, folder, name=sources.name, demo=sources.demo)

    def look(self, file: str, text: str) -> Looked:
        """Check the manual with this text in the file. Raises ValueError for a path out of it."""
        if self._draft not in {None, file}:
            self._take_off()
        self._write(file, text)
        self._checker.put(file, text)
        self._draft = file
        self._checked = self._checker.checked()
        found = self._checked.findings
        return Looked(
            own=[told(each) for each in found if each.at.file == file],
            elsewhere=[
                told(each) for each in found if each.at.file != file and each not in self._known
            ],
        )

    def page(self) -> Shown:
        """Write the draft that was looked at last as a page."""
        if self._draft is None:
            return Shown(html="", address="")
        manual, words = self._checked.manual, Markup()
        page = _page_of(manual, self._draft)
        if isinstance(page, Draft) and isinstance(page.partial, Fault):
            page, words = page.partial, Markup("<p>{}</p>\n").format(PART)
            manual = evolve(manual, faults={**manual.faults, page.id: page})
        site = self._site.of(manual, weave(manual))
        html = words + shown(site, page) if page else words
        return Shown(html=str(html), address=page_address(self._draft))

    def names(self) -> list[Name]:
        """List what the draft may refer to."""
        manual = self._checked.manual
        page = _page_of(manual, self._draft) or next(manual.pages(), None)
        return names(manual, page) if page else []

    def _take_off(self) -> None:
        """Put the manual's own page back in place of the draft."""
        file = self._draft or ""
        if file in self.sources.pages:
            self._write(file, self.sources.pages[file])
            self._checker.put(file, self.sources.pages[file])
        else:
            (self.folder / file).unlink(missing_ok=True)
            self._checker.remove(file)

    def _write(self, file: str, text: str) -> None:
        place = (self.folder / file).resolve()
        if not place.is_relative_to(self.folder.resolve()):
            msg = f"{file} leads out of the manual's folder."
            raise ValueError(msg)
        place.parent.mkdir(parents=True, exist_ok=True)
        place.write_text(text, encoding="utf-8", errors="surrogatepass", newline="")


def _page_of(manual: Manual, file: str | None) -> Page | None:
    return next((each for each in manual.texts() if each.file == file), None)


def _frame(size: Size | None) -> str:
    """Return a drawing's frame: all that a page needs of it is its size."""
    return f'<svg viewBox="0 0 {size[0]} {size[1]}"/>' if size else ""
