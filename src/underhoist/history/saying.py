"""The author's Markdown as it is quoted in the words of a change."""

import re
from collections.abc import Callable
from difflib import SequenceMatcher

from underhoist.references import SCHEMES

Name = Callable[[str], str]
"""Gives the name of what a reference such as tool:hoist names."""

LONGEST = 160
"""Characters that are quoted of a text."""
WHOLE = 90
"""Characters up to which a text that changed is quoted whole."""
AROUND = 4
"""Words left standing on either side of what changed in a long text."""

_BARE = re.compile(rf"<((?:{'|'.join(sorted(SCHEMES))}):[^<>\s]+)>")
_IMAGE = re.compile(r"!\[([^\]]*)\]\([^)]*\)")
_LINK = re.compile(r"\[([^\]]*)\]\([^)]*\)")
_MARKS = re.compile(r"\*\*|__|(?<!\w)[*_](?=\w)|(?<=\w)[*_](?!\w)|`")


def said(text: str, name: Name) -> str:
    """Give a paragraph as it is read: references by their names, no marks, one line."""
    text = _BARE.sub(lambda found: name(found[1]), text)
    text = _IMAGE.sub(r"drawing: \1", text)
    text = _LINK.sub(r"\1", text)
    return " ".join(_MARKS.sub("", text).split())


def quoted(text: str) -> str:
    """Quote a text, cut where it is long."""
    return f"“{_short(text)}”"


def _short(text: str) -> str:
    return text if len(text) <= LONGEST else text[: LONGEST - 1].rstrip() + "…"


def now_and_was(old: str, new: str) -> str:
    """Quote what is said now and what was said, of long texts only where they differ."""
    if max(len(old), len(new)) > WHOLE:
        old, new = _differing(old.split(), new.split())
    return f"“{_short(new)}” (was “{_short(old)}”)"


def _differing(old: list[str], new: list[str]) -> tuple[str, str]:
    """Cut two texts to what differs and a few words on either side."""
    blocks = SequenceMatcher(None, old, new, autojunk=False).get_opcodes()
    changed = [each for each in blocks if each[0] != "equal"]
    first, last = changed[0], changed[-1]
    return _cut(old, first[1], last[2]), _cut(new, first[3], last[4])


def _cut(words: list[str], start: int, end: int) -> str:
    start, end = max(0, start - AROUND), min(len(words), end + AROUND)
    text = " ".join(words[start:end])
    return f"{'… ' if start else ''}{text}{' …' if end < len(words) else ''}"
