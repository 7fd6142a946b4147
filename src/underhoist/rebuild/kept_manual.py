"""The manual as it was read for the build before, and as it is read now."""

import hashlib
from collections.abc import Mapping
from functools import cached_property
from pathlib import Path

from underhoist.model import Manual
from underhoist.rebuild.parted import Index, Parted
from underhoist.source import Read, is_page, manual_of
from underhoist.source import read as read_page


class KeptManual:
    """Reads the pages that are others than before."""

    def __init__(self, files: Mapping[str, str], reads: Parted[Read]) -> None:
        """Take the hash of each file before, and what was read of the pages."""
        self._old_files = files
        self._reads = reads
        self._old_names = tuple(sorted(reads))
        self._replaced: dict[str, Read] = {}
        self._hashes: dict[str, str] = {}
        self._others: dict[str, str] = {}

    def read(self, file: str, data: bytes) -> Read:
        """Read a page, if it is another than before."""
        digest = _hash(data)
        self._hashes[file] = digest
        before = self._reads.get(file)
        if before is not None and self._old_files.get(file) == digest:
            return before
        if before is not None:
            self._replaced.setdefault(file, before)
        self._reads[file] = made = read_page(file, data)
        return made

    @property
    def touched(self) -> frozenset[str]:
        """The pages that are new, other or gone."""
        old = {file: hashed for file, hashed in self._old_files.items() if is_page(file)}
        return differing(old, self._hashes)

    @cached_property
    def old(self) -> Manual:
        """The manual before."""
        reads = (self._replaced.get(file) or self._reads[file] for file in self._old_names)
        return manual_of(reads, self._old_files)

    def files(self, manual: Manual, folder: Path) -> dict[str, str]:
        """Return the hash of each file: of a page as it was read, of others as they are now."""
        for file in manual.files - self._hashes.keys() - self._others.keys():
            self._others[file] = _hash((folder / file).read_bytes())
        known = self._hashes | self._others
        return {file: known[file] for file in manual.files}

    def keep(self, folder: Path) -> Index:
        """Write what was read into the folder of the parts. Raises OSError."""
        for file in self._reads.keys() - self._hashes.keys():
            del self._reads[file]
        return self._reads.keep(folder)


def differing(old: Mapping[str, str], new: Mapping[str, str]) -> frozenset[str]:
    """Name the files that are new, other or gone."""
    return frozenset(file for file in old.keys() | new.keys() if old.get(file) != new.get(file))


def _hash(data: bytes) -> str:
    return hashlib.sha256(data).hexdigest()
