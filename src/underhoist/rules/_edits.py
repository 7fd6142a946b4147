"""Edits that rules offer: another id in the front matter or the text, one more entry of a list."""

import re

from underhoist.finding import Edit
from underhoist.model import Page
from underhoist.place import Placed
from underhoist.prose import prose

_PLAIN = re.compile(r"[\w/.-]+")
"""What may stand in place of an id without quotes."""


def retyped(placed: Placed[str], text: str) -> Edit | None:
    """Write another id in place of one in the front matter; None where it stands in quotes."""
    at = placed.at
    if not placed.is_plain or not _PLAIN.fullmatch(text):
        return None
    return Edit(at.file, at.line, at.column, at.line, at.column + len(placed.written), text)


def in_text(page: Page, start: int, end: int, text: str) -> Edit | None:
    """Write this in place of a piece of the body; None where the piece runs over a line."""
    if "\n" in page.body.text[start:end]:
        return None
    at = prose(page.body).place(start, page.file)
    return Edit(at.file, at.line, at.column, at.line, at.column + end - start, text)


def added(items: tuple[Placed[str], ...], id_: str, key: str) -> Edit | None:
    """Add an id to a list of the front matter, after the last one.

    None where it cannot be told how the list is written: empty, or one value without brackets.
    """
    if not items or not all(each.is_plain for each in items):
        return None
    first, last = items[0].at, items[-1].at
    end = last.column + len(items[-1].written)
    in_brackets = first.column == len(key) + 4
    below = last.column < len(key) + 3 and (len(items) == 1 or first.column == last.column)
    if in_brackets and first.line == last.line:
        return Edit(last.file, last.line, end, last.line, end, f", {id_}")
    if below and (len(items) == 1 or first.line < last.line):
        indent = " " * (last.column - 3)
        return Edit(last.file, last.line, end, last.line, end, f"\n{indent}- {id_}")
    return None
