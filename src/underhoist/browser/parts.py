"""A large file cut into parts, so that a phone which has an older one fetches only what changed.

Where it is cut follows from the words around the place, not from how far it is from the beginning:
what is put in or taken out moves no cut after it.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from itertools import accumulate, chain
from pathlib import Path
from typing import NamedTuple
from zlib import crc32

from underhoist.browser.hashes import sha
from underhoist.browser.packer import Packer

FOLDER = "offline/parts"

LARGE = 200_000
"""Bytes from which a file is cut. Below, it is fetched whole."""

_LEAST, _MOST = 16_000, 128_000
"""Bytes of a part."""

_RARE = 512
"""One word in so many is a place to cut."""

_WORD = re.compile(rb"[^,\n]*[,\n]?")


class Part(NamedTuple):
    """One part: size in bytes, hash."""

    size: int
    sha: str


def cut(content: bytes) -> Iterator[bytes]:
    """Cut a text at commas and ends of lines; joined, the parts are the text again."""
    began = 0
    for place in (*_places(content), len(content)):
        while place - began > _MOST:
            yield content[began : began + _MOST]
            began += _MOST
        if began < place and (place - began >= _LEAST or place == len(content)):
            yield content[began:place]
            began = place


def _places(content: bytes) -> list[int]:
    """Find the places to cut: the end of a word that with the one before it has a rare sum."""
    words = _WORD.findall(content)
    sums = map(crc32, words, chain((0,), map(crc32, words)))  # words by the million: no loop here
    ends = accumulate(map(len, words))
    return [end for end, sum_ in zip(ends, sums, strict=True) if sum_ % _RARE == 0]


def write_parts(site: Path, parts: Iterable[bytes], packer: Packer) -> list[Part]:
    """Write each part, packed, under the name that its hash gives it."""
    written: list[Part] = []
    for part in parts:
        hashed = sha(part)
        place = site / FOLDER / f"{hashed[:12]}.bin"
        if not place.exists():
            place.write_bytes(packer.packed(part))
        written.append(Part(len(part), hashed))
    return written
