"""How a report names a file: as seen from where the command was called."""

import os
from pathlib import Path

from underhoist.place import Place


def seen_from_here(folder: Path, place: Place) -> str:
    """Return the path an editor opens: from the current folder, or whole if it lies elsewhere."""
    full = folder / place.file
    try:
        relative = os.path.relpath(full)
    except ValueError:  # another drive
        return str(full)
    return relative if not relative.startswith("..") else str(full)
