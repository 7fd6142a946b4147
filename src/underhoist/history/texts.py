"""The text of a body by its parts, so that only what reads differently counts as a change."""

import re
from collections.abc import Iterator

from attrs import frozen

from underhoist.history.plain import Plain
from underhoist.model import Body
from underhoist.prose import prose
from underhoist.unseen import without_comments

_HEADING = re.compile(r"^##[ \t]+(.*?)[ \t#]*$", re.MULTILINE)
_GAP = re.compile(r"\n(?:[ \t]*\n)+")
_NUMBER = re.compile(r"^ {0,3}\d{1,9}\.[ \t]+")
_SET_OUT = re.compile(r"^(?:[ \t]{4}|[ \t]*(?:[-*+>|#]|\d+[.)]|`{3}|~{3}))", re.MULTILINE)
"""A line whose place on the page matters: code, a list, a table, a quotation."""


@frozen
class Texts:
    """A body by its parts."""

    sections: dict[str, Plain]
    """Paragraphs by heading; those before the first heading under ""."""
    steps: list[Plain]
    """Paragraphs of each step, its action first or after its cautions."""


def texts(body: Body) -> Texts:
    """Cut a body into sections and steps; line breaks inside a paragraph do not count."""
    body = Body(without_comments(body.text), body.first_line)
    steps = prose(body).steps
    rest = body.text
    for step in reversed(steps):
        rest = rest[: step.start] + rest[step.end :]
    return Texts(_sections(Body(rest, 1)), [_step(step.text) for step in steps])


def _sections(body: Body) -> dict[str, Plain]:
    headings = list(_HEADING.finditer(prose(body).text))
    starts = [0, *(each.end() for each in headings)]
    ends = [*(each.start() for each in headings), len(body.text)]
    names = ["", *(body.text[each.start(1) : each.end(1)] for each in headings)]
    made: dict[str, Plain] = {}
    for name, start, end in zip(names, starts, ends, strict=True):
        paragraphs: list[Plain] = list(_paragraphs(body.text[start:end]))
        if paragraphs or name:
            made[_own(name, made)] = paragraphs
    return made


def _own(name: str, taken: dict[str, Plain]) -> str:
    """Tell a heading from an earlier one with the same words."""
    own, count = name, 2
    while own in taken:
        own, count = f"{name} ({count})", count + 1
    return own


def _step(text: str) -> list[Plain]:
    """Give a step's paragraphs; its number is not part of it, and neither is its indentation."""
    lines = _NUMBER.sub("    ", text.rstrip(), count=1).split("\n")
    return list(_paragraphs("\n".join(line.removeprefix("    ") for line in lines)))


def _paragraphs(text: str) -> Iterator[str]:
    lines = "\n".join(line.rstrip() for line in text.expandtabs(4).splitlines())
    for part in _GAP.split(lines.strip("\n")):
        if part.strip():
            yield part if _SET_OUT.search(part) else " ".join(part.split())
