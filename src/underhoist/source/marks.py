"""Where a mark of the YAML parser stands for people: their lines are those that editors count."""

from typing import Protocol

_ODD_ENDS = frozenset("\u0085\u2028\u2029")
"""Line ends to YAML and to nobody else."""


class Mark(Protocol):
    """What both makes of the parser give, all counted from 0."""

    index: int
    line: int
    column: int


class Marks:
    """The places of one text."""

    def __init__(self, text: str) -> None:
        self.text = text
        self._has_odd_ends = not _ODD_ENDS.isdisjoint(text)

    def place(self, mark: Mark) -> tuple[int, int]:
        """Give row and column, from 0."""
        return self.at(mark.index) if self._has_odd_ends else (mark.line, mark.column)

    def at(self, index: int) -> tuple[int, int]:
        """Give row and column of the sign with this index, from 0."""
        before = self.text[:index]
        return before.count("\n"), len(before) - before.rfind("\n") - 1
