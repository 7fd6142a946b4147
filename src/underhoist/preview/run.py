"""Watches the manual and keeps the preview in step with it."""

import time
from functools import partial
from pathlib import Path
from shutil import rmtree
from threading import Lock, Thread
from typing import TextIO

from attrs import evolve

from underhoist import theme
from underhoist.browser import BrowserError, install, renew_search
from underhoist.build import settings_of
from underhoist.check import FolderChecker
from underhoist.pages import Sheet
from underhoist.pages.authored import purpose
from underhoist.pages.every import check_addresses
from underhoist.pages.html import join
from underhoist.plugin import NotBuiltError
from underhoist.preview.kept_site import KeptSite
from underhoist.preview.now import Board, Now
from underhoist.preview.panel import LIST, everything
from underhoist.preview.server import server
from underhoist.preview.stand_in import StandIns
from underhoist.project import Unusable, pages_folder
from underhoist.rebuild import KeptRules
from underhoist.report import write

PAUSE = 0.15
"""Seconds between two looks at the folder."""

SETTLED = 0.03
"""Seconds that a change gets to be finished: many editors save by deleting and renaming."""


class Preview:
    """One preview of one project."""

    def __init__(self, project: Path, folder: Path, out: TextIO) -> None:
        """Read the project and build it below `folder`, which is empty. Raises Unusable."""
        self._settings = settings_of(project)
        self._folder, self._out = folder, out
        self._checker = FolderChecker(pages_folder(project), judge=KeptRules())
        self._stand_ins = StandIns()
        self._writing = Lock()
        self._frame = self._stamps()
        self._site: KeptSite | None = None
        self._builds = 0
        self._read()
        self.board = Board(Now(folder, self._checked, {}))
        self._build()

    def run(self, port: int) -> None:
        """Serve and follow until Ctrl-C. Raises OSError for a taken port."""
        running = server(self.board, port)
        Thread(target=running.serve_forever, daemon=True).start()
        address = f"http://127.0.0.1:{running.server_port}/"
        self._say(f"The preview is at {address} until you press Ctrl-C.")
        try:
            while True:
                self.look()
                time.sleep(PAUSE)
        except KeyboardInterrupt:
            pass
        finally:
            running.shutdown()
            running.server_close()

    def look(self) -> bool:
        """Look at the project once and follow what changed; return whether anything did."""
        frame = self._stamps()
        try:
            touched = self._settled()
        except Unusable as problem:
            return self._lose(str(problem))
        if frame != self._frame:
            self._frame = frame
            self._build()
        elif touched or self._lost:
            self._follow(touched)
        else:
            return False
        return True

    def _settled(self) -> frozenset[str]:
        """Return the manual's files that changed, once that is over. Raises Unusable."""
        touched = self._checker.refresh()
        if touched:
            time.sleep(SETTLED)
            touched |= self._checker.refresh()
        return touched

    def _lose(self, problem: str) -> bool:
        """Say once that the manual cannot be read; the last state stays."""
        if not self._lost:
            self._lost = True
            self._say(problem)
            self._hang(notice=problem)
        return False

    def _build(self) -> None:
        """Build everything; where that does not work the last state stays, and it is said why."""
        self._builds += 1
        root = self._folder / f"site-{self._builds}"
        self._read()
        try:
            site = KeptSite(self._settings, self._shown.manual, root)
        except NotBuiltError as problem:
            rmtree(root, ignore_errors=True)
            self._say(str(problem))
            self._hang(notice=str(problem))
            return
        self._add_phone_side(root)
        old, self._site = self._site, site
        self._hang()
        self._report()
        if old:
            rmtree(old.root, ignore_errors=True)

    def _follow(self, touched: frozenset[str]) -> None:
        """Make anew what changed, the touched pages first; what is touched meanwhile goes first."""
        self._read()
        if self._site is None:
            self._build()
            return
        batches = self._site.renew(self._shown.manual, touched)
        for at, changed in enumerate(batches):
            if at == 0 or changed:
                self._hang()
            if newer := self._settled_if_there():
                self._follow(newer)
                return
        self._report()

    def _settled_if_there(self) -> frozenset[str]:
        try:
            return self._settled()
        except Unusable:  # the next look says so
            return frozenset()

    def _read(self) -> None:
        self._lost = False
        self._checked = self._checker.checked()
        kept = self._checker.checker
        self._shown = self._stand_ins.shown(kept.reads, kept.files)

    def _hang(self, notice: str = "") -> None:
        """Show what was read last, or keep it and say what is in the way."""
        if not notice:
            try:
                check_addresses(self._shown.manual)
            except Unusable as problem:
                notice = str(problem)
        site = self._site
        root = site.root if site else self._folder
        now = Now(root, self._checked, self._shown.said, notice)
        if site:
            list_page, beside = partial(self._list_page, site), partial(self._beside, site)
            now = evolve(now, list_page=list_page, write_beside=beside)
        self.board.hang(now)

    def _list_page(self, site: KeptSite) -> str:
        checked = self._checked
        summary = "Everything that the check finds in the manual, file by file."
        html = join((purpose(summary), everything(checked)))
        sheet = Sheet(address=LIST, kind="index", title="Findings", summary=summary, html=html)
        return site.html(sheet)

    def _beside(self, site: KeptSite) -> None:
        with self._writing:
            if site.write_beside():
                try:
                    renew_search(site.root)
                except BrowserError as problem:
                    self._say(f"The search does not follow in this preview. {problem}")

    def _add_phone_side(self, root: Path) -> None:
        """Add what calculators run on, and no offline store: it would answer with old pages."""
        try:
            install(root, progress=lambda _: None, offline=False)
        except BrowserError as problem:
            self._say(f"The calculators do not answer in this preview. {problem}")

    def _stamps(self) -> frozenset[tuple[str, int]]:
        """Return by what it is known that settings or templates changed: then all is built anew."""
        files = [self._settings, *(path for path in theme.folder().rglob("*") if path.is_file())]
        return frozenset((str(path), path.stat().st_mtime_ns) for path in files)

    def _report(self) -> None:
        if self._site and (failed := sorted(self._site.failed)):
            self._say(f"These pages stay as they were: {', '.join(failed)}.")
        write("text", self._checked, self._checker.folder, self._out)
        self._out.flush()

    def _say(self, words: str) -> None:
        self._out.write(f"{words}\n")
        self._out.flush()
