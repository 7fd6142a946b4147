"""The site that the build before left: what of it is still so is linked into the new one.

A link costs next to nothing, but both sites then hold one file. So nothing is ever written into a
file that was taken over; what differs is written as a file of its own.
"""

import os
import shutil
from collections.abc import Mapping
from pathlib import Path

from underhoist.browser.hashes import Hashes, Stamped, sha
from underhoist.rebuild.spare import Spare


class OldSite:
    """Hands files of the old site to a new one."""

    def __init__(self, site: Path, files: Mapping[str, Stamped], into: Path) -> None:
        """Take the files of the old site as they were left, and the folder of the new one."""
        self._site, self._files, self._into = site, files, into
        self._hashes = Hashes(site, files)
        self._spare = Spare(into)
        self.linked: dict[str, Stamped] = {}
        """The files that are one with the old site's, as they are known there."""

    def begin_with(self, spare: Path) -> None:
        """Let the new site begin with one that stood before the old, if there is one.

        Call `finish` when all is taken and put.
        """
        self._spare.use(spare)

    def finish(self) -> None:
        """Take out of the new site what it began with and nobody asked for."""
        self._spare.clear()

    def holds(self, path: str, wanted: str = "") -> bool:
        """Say whether the file is as it was left, and of this hash if one is wanted."""
        left = self._files.get(path)
        if left is None or (wanted and left.sha != wanted):
            return False
        try:
            return self._hashes.of(path).sha == left.sha
        except OSError:
            return False

    def take(self, path: str, wanted: str = "") -> bool:
        """Put the old file in the new site; return False where it is not as it was left."""
        if not self.holds(path, wanted):
            return False
        self._link(path)
        return True

    def put(self, path: str, data: bytes) -> None:
        """Write a file into the new site, or take the old one where it holds the same."""
        if not self.take(path, sha(data)):
            self._spare.free(path)
            Path(self._place(path)).write_bytes(data)

    def _link(self, path: str) -> None:
        old, new = f"{self._site}/{path}", self._place(path)
        known = self._hashes.of(path)
        if not self._spare.stands(path, known.number):
            try:
                os.link(old, new)
            except OSError:  # a disk without links, or too many of one file
                shutil.copy2(old, new)
                return
        self.linked[path] = known

    def _place(self, path: str) -> str:
        """Make the folder for a file, and return where it goes: texts, for they are many."""
        folder = path.rpartition("/")[0]
        if folder not in self._spare.folders:
            self._spare.make(folder)
        return f"{self._into}/{path}"
