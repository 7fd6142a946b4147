"""What changed between two builds: portraits of pages, differences in words, the site's record."""

from underhoist.history.change import Change, Rank
from underhoist.history.compare import compare
from underhoist.history.history import (
    Earlier,
    History,
    Present,
    advance,
    earlier,
    key_of,
    present,
    present_as,
    since,
)
from underhoist.history.portrait import Painter, Portrait, revision

__all__ = [
    "Change", "Earlier", "History", "Painter", "Portrait", "Present", "Rank", "advance",
    "compare", "earlier", "key_of", "present", "present_as", "revision", "since",
]  # fmt: skip
