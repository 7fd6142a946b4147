"""What a page must know about a drawing before the browser has fetched it."""

import re
from functools import cache
from pathlib import Path

_VIEW_BOX = re.compile(r'<svg\b[^>]*\bviewBox="[-\d.]+[ ,]+[-\d.]+[ ,]+([\d.]+)[ ,]+([\d.]+)"')


def size(file: Path) -> tuple[int, int] | None:
    """Width and height from the view box of an SVG file; None for any other picture."""
    if file.suffix != ".svg" or not file.is_file():
        return None
    return _read(file, file.stat().st_mtime_ns)


@cache
def _read(file: Path, changed: int) -> tuple[int, int] | None:
    del changed  # only there so that a file that changed is read again
    found = _VIEW_BOX.search(file.read_text(encoding="utf-8", errors="replace")[:4000])
    return (round(float(found[1])), round(float(found[2]))) if found else None
