"""Wheels whose bytes follow from their contents alone."""

from __future__ import annotations

import zipfile
from base64 import urlsafe_b64encode
from collections.abc import Mapping
from hashlib import sha256
from pathlib import Path

# The first date a zip archive knows; the real one would make equal contents unequal files.
_DATE = (1980, 1, 1, 0, 0, 0)


def write_wheel(place: Path, contents: Mapping[str, bytes]) -> None:
    """Write a wheel of these files, by name, with a RECORD of them (PEP 427)."""
    record = next(name for name in contents if name.endswith(".dist-info/WHEEL"))
    record = record.removesuffix("WHEEL") + "RECORD"
    lines = [f"{name},{_digest(content)}" for name, content in sorted(contents.items())]
    everything = {**contents, record: "\n".join([*lines, f"{record},,", ""]).encode()}
    with zipfile.ZipFile(place, "w") as archive:
        for name, content in sorted(everything.items()):
            entry = zipfile.ZipInfo(name, _DATE)
            entry.compress_type = zipfile.ZIP_DEFLATED
            archive.writestr(entry, content)


def read_wheel(place: Path) -> dict[str, bytes]:
    """Return every file of a wheel by name, its RECORD left out."""
    with zipfile.ZipFile(place) as archive:
        return {
            name: archive.read(name)
            for name in archive.namelist()
            if not name.endswith((".dist-info/RECORD", "/"))
        }


def _digest(content: bytes) -> str:
    """Return hash and size as a RECORD line has them."""
    text = urlsafe_b64encode(sha256(content).digest()).rstrip(b"=").decode()
    return f"sha256={text},{len(content)}"
