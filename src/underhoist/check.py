"""The check of a folder: read what changed, apply the rules, put what they found in order."""

import time
from pathlib import Path

from underhoist.checker import Checked, Checker, Judge, Reader
from underhoist.finding import Finding
from underhoist.place import Place
from underhoist.source import Read, files_of, is_page
from underhoist.source.drawing import is_live, live_file
from underhoist.source.faults import Faults, fault
from underhoist.source.split import read_bytes
from underhoist.source.walk import Files

__all__ = ["Checked", "FolderChecker", "check"]

YOUNG = 3_000_000_000
"""Nanoseconds. Some disks know times by two seconds only: within these a file may change unseen."""

Stamp = tuple[int, int, int]
"""By what a file is known to be the same: when it was changed, its size, its number on the disk."""


def check(folder: Path) -> Checked:
    """Check the pages in this folder. Raises Unusable where there is no such folder or no page."""
    return FolderChecker(folder).checked()


class FolderChecker:
    """A folder's manual that can be checked again after changes: only what changed is read."""

    def __init__(
        self, folder: Path, reader: Reader | None = None, judge: Judge | None = None
    ) -> None:
        """Read the folder. Raises Unusable where there is no such folder or no page in it."""
        self.folder = folder
        self.checker = Checker({}, reader=reader, judge=judge)
        self._files = Files((), ())
        self._stamps: dict[str, Stamp] = {}
        self._live: dict[str, Finding] = {}
        """What is wrong with drawings and the like, by file."""
        self.refresh()

    def refresh(self) -> frozenset[str]:
        """Take in what changed on the disk; return the files that are new, changed or gone.

        Raises Unusable where the folder or its last page is gone; what was read is then kept.
        """
        files = files_of(self.folder)
        gone = frozenset(self._files.names) - frozenset(files.names)
        for file in gone:
            self.checker.remove(file)
            self._stamps.pop(file, None)
            self._live.pop(file, None)
        self._files = files
        return gone | {file for file in files.names if self._changed(file)}

    def checked(self) -> Checked:
        """Apply the rules to what was read last."""
        return self.checker.checked((*self._files.findings, *self._live.values()))

    def _changed(self, file: str) -> bool:
        """Read the file if it may be another than before, and say whether it is."""
        stamp, known = self._stamp(file), self._stamps.get(file)
        if stamp == known and time.time_ns() - stamp[0] > YOUNG:
            return False
        self._stamps[file] = stamp
        if is_page(file):
            return self._read(file)
        self.checker.put(file, b"")
        if is_live(file):
            self._look_into(file)
        return stamp != known

    def _read(self, file: str) -> bool:
        try:
            return self.checker.put(file, read_bytes(self.folder / file, file))
        except Faults as faults:
            return self.checker.hold(Read(file, None, None, faults.findings))

    def _look_into(self, file: str) -> None:
        """Keep what is wrong with a drawing; one that cannot be opened is no part of a site."""
        try:
            found = live_file(file, (self.folder / file).read_bytes())
        except OSError as error:
            wrong = f"The file cannot be opened: {error.strerror}."
            mend = "Make it readable, or take it out."
            found = fault("unreadable-page", Place(file, 1, 1), file, wrong, mend)
        self._live.pop(file, None)
        if found:
            self._live[file] = found

    def _stamp(self, file: str) -> Stamp:
        """Return the file's stamp, or zeros where it is gone since it was listed."""
        try:
            found = (self.folder / file).stat()
        except OSError:
            return 0, 0, 0
        return found.st_mtime_ns, found.st_size, found.st_ino
