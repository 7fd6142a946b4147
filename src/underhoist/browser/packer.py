"""Packing with gzip, done once for equal content: most of a build's pages are as they were."""

from __future__ import annotations

import gzip
import os
import time
from collections.abc import Callable
from pathlib import Path
from threading import get_ident

from attrs import frozen

from underhoist.browser.hashes import sha

_UNUSED = 7 * 86_400
"""Seconds after which what no build used is dropped."""


@frozen
class Packer:
    """Packs, and keeps in a folder what it packed; without a folder it keeps nothing."""

    kept: Path | None = None

    def packed(self, content: bytes) -> bytes:
        """Return the content in gzip; equal contents give equal bytes."""
        return self.packed_of(sha(content), lambda: content)

    def packed_of(self, name: str, content: Callable[[], bytes], level: int = 9) -> bytes:
        """Return the content in gzip; it is asked for only where nothing is kept by its name.

        The name has to follow from the content: a hash of it, or of the hashes of its parts.
        """
        if self.kept is None:
            return gzip.compress(content(), level, mtime=0)
        place = self.kept / f"{name}.bin"
        try:
            found = place.read_bytes()
        except FileNotFoundError:
            found = gzip.compress(content(), level, mtime=0)
            place.parent.mkdir(parents=True, exist_ok=True)
            unfinished = place.with_suffix(f".{os.getpid()}-{get_ident()}")
            unfinished.write_bytes(found)
            unfinished.replace(place)
        else:
            place.touch()
        return found

    def drop_unused(self) -> None:
        """Drop what no build used for a week."""
        oldest = time.time() - _UNUSED
        for file in self.kept.iterdir() if self.kept and self.kept.exists() else ():
            if file.stat().st_mtime < oldest:
                file.unlink(missing_ok=True)
