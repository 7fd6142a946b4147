"""A preview that follows every change and keeps the last good state when a page breaks."""

from collections.abc import Callable
from pathlib import Path
from typing import TextIO

from underhoist.browser import BrowserError, BrowserReport, install
from underhoist.build import build, settings_of
from underhoist.plugin import NotBuiltError, live_server
from underhoist.project import Unusable, pages_folder
from underhoist.report import write
from underhoist.theme import folder as theme_folder


class Preview:
    """One preview of one project."""

    def __init__(self, project: Path, site: Path, out: TextIO) -> None:
        self.project, self.site, self.out = project, site, out

    def run(self, port: int) -> None:
        """Build, serve and watch until Ctrl-C; raises Unusable, or OSError for a taken port."""
        watched = [pages_folder(self.project), settings_of(self.project), theme_folder()]
        self.site.mkdir(parents=True)
        self.build()
        self.out.write(f"The preview is at http://127.0.0.1:{port}/ until you press Ctrl-C.\n")
        self.out.flush()
        live_server(self.site, self.build, watched, port)

    def build(self) -> None:
        """Build once; what is wrong is printed, and the browser keeps what it has."""
        try:
            built = build(self.project, self.site, self, self._phone_side)
        except (Unusable, NotBuiltError) as problem:
            self.out.write(f"{problem}\n")
        else:
            write("text", built.checked, built.pages, self.out)
        self.out.flush()

    def _phone_side(self, site: Path, tell: Callable[[str], None]) -> BrowserReport | None:
        """Add what calculators run on, and no offline store: it would answer with old pages."""
        try:
            return install(site, progress=tell, offline=False)
        except BrowserError as problem:
            self.out.write(f"The calculators do not answer in this preview. {problem}\n")
            return None

    def stage(self, words: str, steps: int | None = None) -> None:
        """Nothing: a preview is built in a moment."""

    def step(self) -> None:
        """Nothing, likewise."""
