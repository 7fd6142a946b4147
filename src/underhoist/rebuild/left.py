"""What a build leaves in its site, and which of it the next may take over without making it."""

from collections.abc import Callable, Iterable, Mapping
from pathlib import Path

from attrs import field, frozen

from underhoist.browser import Before, BrowserError, BrowserReport, install, install_again, tools
from underhoist.browser.hashes import Hashes, Stamped, paths_in
from underhoist.rebuild import builder
from underhoist.rebuild.old_site import OldSite

_OF_THE_PAGES = ("search/index.json", "manifest.webmanifest", "sw.js", "underhoist.json")
_FOLDER_OF_THE_PAGES = "offline/"
_DATED = "sitemap.xml"
INDEX = "search/index.json"


@frozen
class Left:
    """What a finished site holds."""

    files: Mapping[str, Stamped] = field(factory=dict[str, Stamped])
    """Every file, by its path."""
    fixed: frozenset[str] = frozenset()
    """The files that follow from no page: templates, scripts, drawings, the phone's runtime."""
    cuts: Mapping[str, list[int]] = field(factory=dict[str, list[int]])
    report: BrowserReport | None = None
    outside: str = ""
    """What the phone's side was made from besides; "" where the site has none."""
    searched: Mapping[str, tuple[int, str, str]] = field(factory=dict[str, tuple[int, str, str]])
    """Number in the search index and notes of each searched page, by its address."""


class PhoneSide:
    """Adds the phone's side to a new site: the whole, or to a taken-over site what differs."""

    def __init__(self, old: Left, site: Path, *, wanted: bool) -> None:
        """Take what the old site holds, and whether the new one is to have such a side."""
        self._old, self._site = old, site
        self.outside = _outside(site) if wanted else ""
        self._hashes = Hashes(site)
        self._report: BrowserReport | None = None

    def add(
        self, new: Path, tell: Callable[[str], None], taken: OldSite | None = None
    ) -> BrowserReport:
        """Add it, where files were `taken` only what differs. Raises BrowserError."""
        old, report = self._old, self._old.report
        self._hashes = Hashes(new, old.files if taken else None, old.cuts)
        if taken:
            self._hashes.found |= taken.linked
        if taken and report is not None:
            before = Before(self._site, report)
            report = install_again(new, progress=tell, before=before, hashes=self._hashes)
        else:
            report = install(new, progress=tell, hashes=self._hashes)
        self._report = report
        return report

    def _stamped(self, known: Mapping[str, Stamped]) -> Mapping[str, Stamped]:
        """Return the hash of every file: of those that the phone stores it is there already."""
        found = Hashes(self._site, known)
        found.found |= self._hashes.found
        return {path: found.of(path) for path in paths_in(self._site)}

    def left(
        self,
        searched: Mapping[str, tuple[int, str, str]],
        of_pages: Iterable[str],
        taken: OldSite | None = None,
    ) -> Left:
        """Note what the finished site holds; `of_pages` are the paths that follow from pages."""
        files = self._stamped(self._old.files if taken else {})
        fixed = self._old.fixed if taken else frozenset(filter(_is_fixed, files)) - set(of_pages)
        return Left(files, fixed, self._hashes.cuts, self._report, self.outside, searched)


def _is_fixed(path: str) -> bool:
    of_pages = path in _OF_THE_PAGES or path.startswith((_FOLDER_OF_THE_PAGES, _DATED))
    return not of_pages


def _outside(site: Path) -> str:
    """Return the hash of others' packages, "" where they are not there yet: nothing is taken."""
    try:
        return builder.outside(tools.node_modules(site))
    except (BrowserError, OSError):
        return ""
