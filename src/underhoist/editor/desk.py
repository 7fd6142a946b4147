"""A manual on the disk with the pages that are open in the editor laid over it."""

from collections import defaultdict
from pathlib import Path

from underhoist.checker import Checked, Checker
from underhoist.finding import Finding
from underhoist.model import Body, Draft, Manual, Page
from underhoist.place import Place, Placed
from underhoist.project import SETTINGS, Unusable, pages_folder
from underhoist.rebuild import KeptRules
from underhoist.source import Read, files_of, is_page
from underhoist.source.faults import Faults
from underhoist.source.split import read_bytes


class Desk:
    """The manual as its author sees it now."""

    def __init__(self, folder: Path) -> None:
        """Read the pages in this folder. Raises Unusable where there are none."""
        self.folder = folder
        self._open: dict[str, str] = {}
        self._last: dict[str, Page] = {}
        self._manual: Manual | None = None
        self._besides: tuple[Finding, ...] = ()
        self._checker = Checker({}, judge=KeptRules())
        self.read_again()

    def read_again(self) -> None:
        """Take in what changed on the disk; what is open stays as it is in the editor."""
        files = files_of(self.folder)
        self._besides = files.findings
        others = (file for file in files.names if not is_page(file))
        self._checker = Checker({}, others, judge=KeptRules())
        for file in files.pages():
            try:
                self._checker.put(file, read_bytes(self.folder / file, file))
            except Faults as faults:
                self._checker.hold(Read(file, None, None, faults.findings))
        for file, text in self._open.items():
            self._checker.put(file, text)

    def show(self, file: str, text: str) -> None:
        """Lay the text of an open page over what is on the disk."""
        self._open[file] = text
        self._checker.put(file, text)

    def close(self, file: str) -> None:
        """Forget an open page: what is on the disk counts again."""
        self._open.pop(file, None)
        self.read_again()

    def checked(self) -> Checked:
        """Check the manual."""
        checked = self._checker.checked(self._besides)
        self._manual = checked.manual
        self._last.update({page.file: page for page in checked.manual.pages()})
        return checked

    @property
    def manual(self) -> Manual:
        """The manual as it was checked last: an editor asks for help at every key."""
        return self._manual or self.checked().manual

    def page(self, file: str) -> Page:
        """Return the page as it could be read last: while one types it often cannot be read."""
        nothing = Placed("", Place(file, 1, 1), "")
        empty = Draft(
            id="", file=file, body=Body("", 1), title=nothing, summary=nothing, kind=""
        )  # fmt: skip
        return self._last.get(file, empty)

    def findings(self) -> dict[str, list[Finding]]:
        """Return the findings by file, with an empty list for an open page without any."""
        by_file: defaultdict[str, list[Finding]] = defaultdict(list)
        by_file.update({file: [] for file in self._open})
        for finding in self.checked().findings:
            by_file[finding.at.file].append(finding)
        return dict(by_file)


def folder_of(page: Path) -> Path | None:
    """Find the folder of pages that this page belongs to; None where it is in no manual."""
    for above in page.resolve().parents:
        if any((above / name).is_file() for name in SETTINGS):
            try:
                folder = pages_folder(above).resolve()
            except Unusable:
                return None
            return folder if page.resolve().is_relative_to(folder) else None
    return None
