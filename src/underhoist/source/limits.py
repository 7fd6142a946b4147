"""Refuses a body that no person writes and the Markdown reader needs minutes for."""

import re
from collections.abc import Iterator

from underhoist.model.page import Body
from underhoist.place import Place
from underhoist.source.faults import Faults, fault

DEEPEST = 20
"""Levels of lists and quotes; a step's own list in a quote stands on the third."""

MOST_BRACKETS = 200
"""Opening brackets in one paragraph: the time to read them grows with their number squared."""

_CONTROL = re.compile(r"[\x00-\x08\x0b-\x1f\x7f]")
"""What no editor shows; two of them the Markdown reader takes out, and joins what they part."""

_MARKER = r"(?:>|[-*+](?=[ \t])|\d{1,9}+\.(?=[ \t]))"
_DEEP = re.compile(
    rf"(?:[ \t]*+{_MARKER}){{{DEEPEST + 1}}}|(?: {{4}}|\t){{{DEEPEST}}}[ \t]*+{_MARKER}"
)
_DEEP_SOMEWHERE = re.compile(rf"\n(?:{_DEEP.pattern})")
"""A quick look: line ends are found far sooner than beginnings of lines."""
_ONLY_MARKERS = re.compile(r"[-*+ \t]*")
_BEGINS = re.compile(rf"[ \t]*+(?:$|\||{_MARKER})")


def refuse_wild(body: Body, file: str) -> None:
    """Raise Faults at the first control sign, line nested too deeply or paragraph of brackets."""
    if sign := _CONTROL.search(body.text):
        raise _control(sign.start(), body, file)
    has_many = body.text.count("[") > MOST_BRACKETS
    if not has_many and not _DEEP_SOMEWHERE.search(f"\n{body.text}"):
        return
    lines = body.text.split("\n")
    for row, line in enumerate(lines, body.first_line):
        if _DEEP.match(line) and not _ONLY_MARKERS.fullmatch(line):
            wrong = f"Lists and quotes stand here more than {DEEPEST} levels deep."
            mend = "Take the extra marks or indentation out."
            raise Faults(fault("unreadable-page", Place(file, row, 1), line, wrong, mend))
    for row, count in _brackets(lines) if has_many else ():
        if count > MOST_BRACKETS:
            at = Place(file, body.first_line + row, 1)
            wrong = f"A paragraph has {count:,} opening brackets; it has at most {MOST_BRACKETS}."
            mend = "Part it into several paragraphs or a list."
            raise Faults(fault("unreadable-page", at, lines[row], wrong, mend))


def _control(offset: int, body: Body, file: str) -> Faults:
    """Refuse the sign at this offset."""
    before = body.text[:offset]
    row, column = before.count("\n"), len(before) - before.rfind("\n")
    line = body.text.split("\n")[row]
    at = Place(file, body.first_line + row, column)
    wrong = "A sign that cannot be printed stands here."
    return Faults(fault("unreadable-page", at, line, wrong, "Take it out."))


def _brackets(lines: list[str]) -> Iterator[tuple[int, int]]:
    """Yield for each paragraph, list item and row of a table its first line and its brackets."""
    start = count = 0
    for row, line in enumerate(lines):
        if _BEGINS.match(line):
            yield start, count
            start, count = row, 0
        count += line.count("[")
    yield start, count
