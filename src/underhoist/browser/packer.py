"""Packing with gzip, done once for equal content: most of a build's pages are as they were."""

from __future__ import annotations

import gzip
import os
import time
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
        if self.kept is None:
            return gzip.compress(content, 9, mtime=0)
        place = self.kept / f"{sha(content)}.bin"
        try:
            found = place.read_bytes()
        except FileNotFoundError:
            found = gzip.compress(content, 9, mtime=0)
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
