"""What changed between two builds: portraits of pages, differences in words, the site's record."""

from underhoist.history.change import Change, Rank
from underhoist.history.compare import compare
from underhoist.history.history import (
    Earlier,
    History,
    Revisions,
    advance,
    earlier,
    key_of,
    since,
)
from underhoist.history.portrait import Painter

__all__ = [
    "Change", "Earlier", "History", "Painter", "Rank", "Revisions", "advance", "compare",
    "earlier", "key_of", "since",
]  # fmt: skip
