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
    since,
)
from underhoist.history.portrait import Painter, revision

__all__ = [
    "Change", "Earlier", "History", "Painter", "Present", "Rank", "advance", "compare",
    "earlier", "key_of", "present", "revision", "since",
]  # fmt: skip
