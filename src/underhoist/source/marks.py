"""Where a mark of the YAML parser stands for people: their lines are those that editors count."""

from collections.abc import Callable
from operator import attrgetter
from typing import Protocol

_ODD_ENDS = "\u0085\u2028\u2029"
"""Line ends to YAML and to nobody else."""

_AS_TOLD = attrgetter("line", "column")


class Mark(Protocol):
    """What both makes of the parser give, all counted from 0."""

    index: int
    line: int
    column: int


class Marks:
    """The places of one text."""

    def __init__(self, text: str) -> None:
        self.text = text
        has_odd_ends = any(end in text for end in _ODD_ENDS)
        self.place: Callable[[Mark], tuple[int, int]] = self._counted if has_odd_ends else _AS_TOLD
        """Gives row and column of a mark, from 0."""

    def _counted(self, mark: Mark) -> tuple[int, int]:
        return self.at(mark.index)

    def at(self, index: int) -> tuple[int, int]:
        """Give row and column of the sign with this index, from 0."""
        before = self.text[:index]
        return before.count("\n"), len(before) - before.rfind("\n") - 1
