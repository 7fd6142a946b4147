"""The Markdown of a body as rules see it: code left out, links found, steps told apart.

A full Markdown parser would take most of the check's time and lose the columns, so this reads
the few forms that matter by line and pattern. Every text keeps its length: an offset in it is an
offset in `body.text`.
"""

import re
from bisect import bisect_right
from collections.abc import Iterator
from functools import cached_property, lru_cache
from operator import attrgetter
from typing import Literal

from attrs import field, frozen

from underhoist.model.page import Body
from underhoist.place import Place
from underhoist.unseen import spaces, without_code

LONGEST_LABEL = 2_000
"""Characters. A longer label is left out: it would be copied for every bracket nested in it."""

STEP_WORDS = {
    "Why": "why", "Good": "good", "Bad": "bad", "Mistake": "mistake", "Note": "note",
    "Second check": "check", "Off": "off", "Back on": "on",
}  # fmt: skip
"""The word that opens a paragraph of a step, and the last part of its class."""

_DESTINATION = re.compile(r"\]\(\s*(<[^<>\n]*>|[^\s()]+(?:\([^\s()]*\)[^\s()]*)*|(?=\)))")
"""Up to the address of a link, which may be nothing at all."""
_CLOSED = re.compile(r"\s*[\"')]")
"""What may follow it: a title or the end. Without either another link may begin in it."""
_AUTOLINK = re.compile(r"<([A-Za-z][A-Za-z0-9+.-]{1,31}:[^\s<>]*)>")
_DEFINITION = re.compile(r"^[ \t>*+.\d-]*+\[[^\[\]]+\]:[ \t]*+\n?[ \t]*+<?([^\s<>]+)", re.MULTILINE)
"""On the left, or in a quote or a list; its address may stand on the next line."""
_ATTRIBUTE = re.compile(r"<[a-z][^<>]*?\b(?:href|src)\s*=\s*[\"']?([^\"'\s<>]+)", re.IGNORECASE)
_BRACKET = re.compile(r"[\[\]]")
_ESCAPED = re.compile(r"\\[\\\[\]<!]")
_STEPS = re.compile(r"^##[ \t]+steps[ \t#]*$", re.IGNORECASE | re.MULTILINE)
_NEXT_HEADING = re.compile(r"\n(?=#{1,2}[ \t])")
_MARKER = re.compile(r" {0,3}\d{1,9}\.[ \t]+")
_ITEM = re.compile(rf"\n(?={_MARKER.pattern})")
"""The line end above an item, which is found far sooner than a beginning of a line."""
_PARAGRAPH = re.compile(r"\S.*(?:\n(?![ \t]*\n).*)*")
_LIST_ENDS = re.compile(
    rf"\n[ \t]*\n(?! |\t|\n|\d{{1,9}}\.[ \t]|[*_]*(?:{'|'.join(STEP_WORDS)})\b)", re.IGNORECASE
)
"""A step's own paragraph that was not indented ends nothing: one slip is then one finding."""


_OFFSET = attrgetter("offset")


@frozen
class Link:
    """A link, an image or an address in angle brackets; `offset` is where it begins in the body."""

    target: str
    label: str
    form: Literal["link", "image", "bare", "definition", "html"]
    offset: int
    file: str
    _prose: "Prose" = field(eq=False, repr=False)

    @property
    def at(self) -> Place:
        """Where it stands; counted only when it is asked for, for most links are in order."""
        return self._prose.place(self.offset, self.file)


@frozen
class StepText:
    """One item of the list under Steps: its number and where it stands in the body."""

    number: int
    start: int
    end: int
    text: str

    def paragraphs(self) -> Iterator[tuple[int, str]]:
        """Offset and text of each paragraph, without the item's own number."""
        marker = _MARKER.match(self.text)
        for part in _PARAGRAPH.finditer(self.text, marker.end() if marker else 0):
            yield self.start + part.start(), part[0].strip()


@frozen(slots=False)
class Prose:
    """A body prepared for the rules."""

    body: Body
    text: str = field(init=False)
    """The body with code, comments and escaped brackets blanked."""

    def __attrs_post_init__(self) -> None:
        object.__setattr__(self, "text", _without_code(self.body.text))

    @cached_property
    def words(self) -> str:
        """The text with the targets of links blanked as well: what a reader reads."""
        text = _AUTOLINK.sub(_blank, self.text)
        return _DESTINATION.sub(_blank, text)

    @cached_property
    def said(self) -> str:
        """The words with one space for each target: for a look at what is said, not where."""
        text = _AUTOLINK.sub(" ", self.text)
        return _DESTINATION.sub(" ", text)

    @cached_property
    def folded(self) -> str:
        """The words without their case, for a quick look before a pattern is tried."""
        return folded(self.said)

    @cached_property
    def _line_starts(self) -> list[int]:
        return [0, *(match.end() for match in re.finditer("\n", self.body.text))]

    def place(self, offset: int, file: str) -> Place:
        """Line and column of an offset."""
        row = bisect_right(self._line_starts, offset) - 1
        return Place(file, self.body.first_line + row, offset - self._line_starts[row] + 1)

    def links(self, file: str) -> list[Link]:
        """Every link in the order of the text."""
        if file not in self._links:
            self._links[file] = self._find_links(file)
        return self._links[file]

    @cached_property
    def _links(self) -> dict[str, list[Link]]:
        return {}

    def _find_links(self, file: str) -> list[Link]:
        found: list[Link] = []
        if "](" in self.text:
            found += self._inline(file)
        if "<" in self.text:
            found += self._others(_AUTOLINK, "bare", file)
            found += self._others(_ATTRIBUTE, "html", file) if "=" in self.text else ()
        if "]:" in self.text:
            found += self._others(_DEFINITION, "definition", file)
        return sorted(found, key=_OFFSET)

    def _inline(self, file: str) -> Iterator[Link]:
        behind = 0
        while match := _DESTINATION.search(self.text, behind):
            close = match.start()
            start = self._opening(close)
            if start is None:  # no link: one may begin in what looked like its address
                behind = close + 2
                continue
            behind = match.end() if _CLOSED.match(self.text, match.end()) else close + 2
            start = start if close - start <= LONGEST_LABEL else close
            image = start > 0 and self.text[start - 1] == "!"
            form = "image" if image else "link"
            label, offset = self.text[start + 1 : close], start - image
            yield Link(match[1].strip("<>"), label, form, offset, file, self)

    def _opening(self, close: int) -> int | None:
        """Return where the bracket that closes here was opened: mostly no other is between."""
        start = self.text.rfind("[", max(0, close - LONGEST_LABEL), close)
        if start >= 0 and self.text.find("]", start, close) < 0:
            return start
        return self._openings.get(close)

    @cached_property
    def _openings(self) -> dict[int, int]:
        """Offset of the opening bracket for each closing one."""
        openings: dict[int, int] = {}
        waiting: list[int] = []
        for bracket in _BRACKET.finditer(self.text):
            if bracket[0] == "[":
                waiting.append(bracket.start())
            elif waiting:
                openings[bracket.start()] = waiting.pop()
        return openings

    def _others(
        self, pattern: re.Pattern[str], form: Literal["bare", "definition", "html"], file: str
    ) -> Iterator[Link]:
        for match in pattern.finditer(self.text):
            yield Link(match[1], "", form, match.start(), file, self)

    @cached_property
    def steps_part(self) -> tuple[int, int]:
        """Where the text below the heading Steps begins and ends; empty without the heading."""
        heading = _STEPS.search(self.text)
        if heading is None:
            return 0, 0
        after = _NEXT_HEADING.search(self.text, heading.end())
        return heading.end(), after.end() if after else len(self.text)

    @cached_property
    def steps(self) -> tuple[StepText, ...]:
        """The items of the ordered list under the heading Steps."""
        begin, end = self.steps_part
        first = _ITEM.search(self.text, begin, end)
        if first is None:
            return ()
        stop = _LIST_ENDS.search(self.text, first.end(), end)
        end = stop.start() if stop else end
        starts = [match.end() for match in _ITEM.finditer(self.text, first.start(), end)]
        spans = zip(starts, [*starts[1:], end], strict=True)
        return tuple(
            StepText(number, start, stop, self.text[start:stop])
            for number, (start, stop) in enumerate(spans, 1)
        )


def folded(text: str) -> str:
    """Make texts alike that a pattern takes for alike where it ignores case, i with a dot or none.

    Offsets in it are not those of the text.
    """
    small = text.casefold()
    return small if small.isascii() else small.replace("ı", "i").replace("\u0307", "")


def listed(text: str) -> tuple[str, ...]:
    """Return what a paragraph such as "Off: pan, two bolts." lists after its word."""
    things = (thing.strip() for thing in text.strip().removesuffix(".").split(","))
    return tuple(thing for thing in things if thing)


@lru_cache(maxsize=4096)
def prose(body: Body) -> Prose:
    """Prepare the body for the rules, once for all of them."""
    return Prose(body)


def _blank(match: re.Match[str]) -> str:
    return spaces(match[0])


def _without_code(text: str) -> str:
    """Turn code, comments and escaped brackets into spaces."""
    text = without_code(text)
    return _ESCAPED.sub("  ", text) if "\\" in text else text
