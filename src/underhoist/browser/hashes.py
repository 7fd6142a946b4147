"""The hash by which a phone proves what it stores."""

from __future__ import annotations

import hashlib
import os
import time
from collections.abc import Callable, Iterable, Iterator, Mapping
from itertools import accumulate
from pathlib import Path
from typing import NamedTuple

from underhoist.check import YOUNG


def sha(content: bytes) -> str:
    """Return half of the SHA-256 in hex: plenty against damage, and half as much to fetch."""
    return hashlib.sha256(content).hexdigest()[:32]


def paths_in(root: Path) -> Iterator[str]:
    """Yield the path of each file below a folder, a site's for one, folder by folder."""
    whole = os.fspath(root)
    for folder, _, names in os.walk(whole):
        below = folder[len(whole) :].replace(os.sep, "/").strip("/")
        yield from (f"{below}/{name}" if below else name for name in names)


class Stamped(NamedTuple):
    """A file that was hashed, and by what it is known to be the same since."""

    changed: int
    """Nanoseconds; 0 where it was too young to be known again."""
    size: int
    number: int
    """Of the file on the disk."""
    sha: str


class Hashes:
    """The hashes of the files of a site; one that is as it was is not read again."""

    def __init__(
        self,
        site: Path,
        known: Mapping[str, Stamped] | None = None,
        cuts: Mapping[str, list[int]] | None = None,
    ) -> None:
        """Take what is known of files by their path, and where large ones are cut by their hash."""
        self._site, self._root = site, os.fspath(site)
        self._known = known or {}
        self._cuts = cuts or {}
        self.found: dict[str, Stamped] = {}
        """What was asked for, by path."""
        self.cuts: dict[str, list[int]] = {}
        """The sizes of the parts of each large file, by its hash."""

    def of(self, path: str) -> Stamped:
        """Hash one file, or know it again. Raises OSError where it cannot be read.

        What was asked for once is not looked at again.
        """
        if path in self.found:
            return self.found[path]
        file = os.path.join(self._root, path)  # noqa: PTH118 - a thousand of them
        stat = os.stat(file)  # noqa: PTH116
        known = self._known.get(path)
        seen = (stat.st_mtime_ns, stat.st_size, stat.st_ino)
        if known is None or known[:3] != seen:
            young = time.time_ns() - stat.st_mtime_ns < YOUNG
            known = Stamped(0 if young else seen[0], *seen[1:], sha(Path(file).read_bytes()))
        self.found[path] = known
        return known

    def size(self, path: str) -> int:
        """Return how many bytes a file is, without reading it."""
        known = self.found.get(path)
        return known.size if known else os.stat(os.path.join(self._root, path)).st_size  # noqa: PTH116, PTH118

    def parts(self, path: str, cut: Callable[[bytes], Iterable[bytes]]) -> list[bytes]:
        """Return a file in parts: where it was cut before, if that is known."""
        content = (self._site / path).read_bytes()
        known = self.of(path).sha
        sizes = self._cuts.get(known)
        ends = list(accumulate(sizes or ()))
        if sizes and ends[-1] == len(content):
            made = [content[end - size : end] for size, end in zip(sizes, ends, strict=True)]
        else:
            made = list(cut(content))
        self.cuts[known] = [len(part) for part in made]
        return made
