"""Makes edits in a text and leaves every other sign of it as it is, line ends and mark included."""

import re
from collections.abc import Iterable

from underhoist.finding import Edit

BYTE_ORDER_MARK = "\ufeff"
"""Some editors begin a file with it; it is no part of the first line."""

_LINE_END = re.compile("\r\n|\r|\n")


def apply(text: str, edits: Iterable[Edit]) -> str:
    """Return the text of a file after these edits of it; of two that meet only the first is made.

    Raises ValueError where an edit lies outside the text.
    """
    starts, ends = _lines(text)
    line_end = text[ends[0] : starts[1]] if len(starts) > 1 else "\n"
    pieces: list[str] = []
    at = 0
    for edit in disjoint(edits):
        start = _offset(starts, ends, edit.line, edit.column)
        end = _offset(starts, ends, edit.end_line, edit.end_column)
        if not at <= start <= end:
            raise ValueError(f"{edit} ends before it begins")
        pieces += [text[at:start], edit.text.replace("\n", line_end)]
        at = end
    return "".join(pieces) + text[at:]


def disjoint(edits: Iterable[Edit]) -> list[Edit]:
    """Return the edits in the order of the text without those that meet one before them.

    An edit that is left out comes back when the text is checked again, if it is still wanted.
    """
    kept: list[Edit] = []
    for edit in sorted(set(edits), key=_span):
        if not kept or _span(edit)[:2] > _span(kept[-1])[2:]:
            kept.append(edit)
    return kept


def _span(edit: Edit) -> tuple[int, int, int, int]:
    return edit.line, edit.column, edit.end_line, edit.end_column


def _lines(text: str) -> tuple[list[int], list[int]]:
    """Return where each line begins and where it ends, its line end left out."""
    breaks = list(_LINE_END.finditer(text))
    first = len(BYTE_ORDER_MARK) if text.startswith(BYTE_ORDER_MARK) else 0
    starts = [first, *(each.end() for each in breaks)]
    return starts, [*(each.start() for each in breaks), len(text)]


def _offset(starts: list[int], ends: list[int], line: int, column: int) -> int:
    if not 1 <= line <= len(starts):
        raise ValueError(f"there is no line {line}")
    offset = starts[line - 1] + column - 1
    if not starts[line - 1] <= offset <= ends[line - 1]:
        raise ValueError(f"line {line} has no column {column}")
    return offset
