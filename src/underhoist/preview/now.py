"""What the preview shows at this moment, and those who wait for the next."""

from collections.abc import Callable, Mapping
from pathlib import Path
from threading import Condition

from attrs import field, frozen
from markupsafe import Markup

from underhoist.checker import Checked
from underhoist.links import page_address
from underhoist.preview.panel import line, panel
from underhoist.source import is_page


@frozen
class Now:
    """One state of the preview."""

    root: Path
    """The folder of the site."""
    checked: Checked
    said: Mapping[str, str]
    """What is to be said of a page that is not shown as its file is, by its file."""
    notice: str = ""
    """What keeps the whole preview from following, if anything does."""
    list_page: Callable[[], str] = str
    """Makes the page with all findings."""
    write_beside: Callable[[], None] = field(default=lambda: None)
    """Brings the files beside the pages up to date, such as the search's and the cards'."""

    def panels(self) -> dict[str, Markup]:
        """Return the panel of each page that has one, by the page's address."""
        files = {each.at.file for each in self.checked.findings} | set(self.said)
        return {
            page_address(file): panel(
                (each for each in self.checked.findings if each.at.file == file),
                self.said.get(file, ""),
            )
            for file in files
            if is_page(file)
        }

    def line(self) -> Markup:
        """Return the line that stands on every page."""
        return line(self.checked, self.notice)


class Board:
    """Where the newest state hangs, for the threads that answer browsers."""

    def __init__(self, now: Now) -> None:
        self._changed = Condition()
        self.count = 0
        self._hang(now)

    def hang(self, now: Now) -> None:
        """Put up a newer state and wake who waits for it."""
        with self._changed:
            self._hang(now)
            self.count += 1
            self._changed.notify_all()

    def wait(self, count: int, seconds: float) -> int:
        """Wait until there is a state after the one of this count, or so long; return the count."""
        with self._changed:
            self._changed.wait_for(lambda: self.count != count, seconds)
            return self.count

    def _hang(self, now: Now) -> None:
        self.now, self.panels, self.line = now, now.panels(), now.line()
