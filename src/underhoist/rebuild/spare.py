"""The site before the old one: kept, for nearly all that the next is to hold stands in it already.

To make a thousand folders, and to delete as many, takes longer than all that has changed.
"""

import os
from contextlib import suppress
from pathlib import Path, PurePosixPath

from underhoist.rebuild.parted import DamagedError


class Spare:
    """A new site's folder that need not be empty: which files stand in it, and as which."""

    def __init__(self, into: Path) -> None:
        """Take the folder of the new site, which is empty."""
        self._into = into
        self._numbers: dict[str, int] = {}
        """Of each file that nobody asked for yet, its number on the disk."""
        self.folders: set[str] = set()

    def use(self, kept: Path) -> None:
        """Put a kept site in the place of the empty folder, if it is to be had."""
        if not kept.is_dir():
            return
        with suppress(OSError):  # another disk, or open somewhere: then the new site begins empty
            self._into.rmdir()
            kept.rename(self._into)
            self._look("")
        self._into.mkdir(exist_ok=True)

    def _look(self, folder: str) -> None:
        """Note what stands in a folder; by its path in the site, which ends with a stroke."""
        self.folders.add(folder.rstrip("/"))
        with os.scandir(f"{self._into}/{folder}") as found:
            entries = list(found)
        for each in entries:
            path = f"{folder}{each.name}"
            if each.is_dir(follow_symlinks=False):
                self._look(f"{path}/")
            else:
                self._numbers[path] = each.inode()

    def make(self, folder: str) -> None:
        """Make a folder. Raises DamagedError where a file of the kept site is in the way."""
        try:
            os.makedirs(f"{self._into}/{folder}", exist_ok=True)  # noqa: PTH103 - a thousand of them
        except (FileExistsError, NotADirectoryError):
            raise DamagedError from None
        self.folders.add(folder)

    def stands(self, path: str, number: int) -> bool:
        """Say whether just this file stands there by now; another one is taken away."""
        there = self._numbers.get(path)
        if there == number:
            del self._numbers[path]
            return True
        self.free(path)
        return False

    def free(self, path: str) -> None:
        """Take a file away that is to be written: another site may hold the very same one.

        Raises DamagedError where a folder is in its place.
        """
        if path in self.folders:
            raise DamagedError
        if self._numbers.pop(path, None) is not None:
            os.unlink(f"{self._into}/{path}")  # noqa: PTH108 - texts, as they are many

    def clear(self) -> None:
        """Take away every file that nobody asked for, and the folders that are empty then."""
        for path in list(self._numbers):
            self.free(path)
            with suppress(OSError):  # something stands in it still
                for folder in list(PurePosixPath(path).parents)[:-1]:
                    (self._into / folder).rmdir()
