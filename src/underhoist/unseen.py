"""What of a body nobody sees, and what is seen as code: comments, fenced blocks, code spans.

The site's Markdown and the rules both ask here: what the page shows is looked into, what it leaves
out is not. Fences and spans are read as Python-Markdown reads them, whichever begins first.
"""

import re
from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Iterator, Sequence
from functools import cached_property

from attrs import frozen

type Span = tuple[int, int]
"""Offsets of the first character and of the one after the last."""

OPENS, CLOSES = "<!--", "-->"

_MARK = re.compile(rf"`+|^~{{3,}}|{OPENS}", re.MULTILINE)
_FENCE = re.compile(r"\s*(`{3,}(?=[^`]*$)|~{3,})")
_TOLD = re.compile(r"^.*(?:`|~~~).*$", re.MULTILINE)
"""A line that can hold code or open a fence."""
_TICKS = re.compile("`+")
_SPAN = re.compile(r"`[^`\n]+`")
"""A code span as nearly all are: one backtick before and behind, on one line."""
_OPENING = re.compile(
    r"^(~{3,}|`{3,})[ \t]*"
    r"(?:\{[^\n]*\}|(?:\.?[\w#.+-]*[ \t]*)(?:hl_lines=([\"'])[^\n]*?\2[ \t]*)?)$",
    re.MULTILINE,
)
_CLOSING = re.compile(r"^(~{3,}|`{3,})[ \t]*$", re.MULTILINE)
_BLANK = re.compile(r"\n[> \t]*(?=\n)")
_SPACE = re.compile(r"[ \t]*")
_NO_LINE_END = re.compile(r"[^\n]")


@frozen(slots=False)
class Unseen:
    """The comments and the code of a text, in its order."""

    text: str

    @cached_property
    def comments(self) -> tuple[Span, ...]:
        """Comments outside of code; one without an end is text to every reader."""
        return tuple(span for span, is_code in self._spans if not is_code)

    @cached_property
    def code(self) -> tuple[Span, ...]:
        """Fenced blocks, and code spans with their backticks."""
        return tuple(span for span, is_code in self._spans if is_code)

    @cached_property
    def _spans(self) -> tuple[tuple[Span, bool], ...]:
        return tuple(self._found())

    def _found(self) -> Iterator[tuple[Span, bool]]:
        at = paragraph_end = 0
        while mark := _MARK.search(self.text, at):
            start, at = mark.span()
            is_code = mark[0] != OPENS
            if is_code and start >= paragraph_end:
                paragraph_end = self._paragraph_end(start)
            end = self._code_end(start, at, paragraph_end) if is_code else self._comment_end(start)
            if end is not None:
                yield (start, end), is_code
                at = end

    def _code_end(self, start: int, run_end: int, last: int) -> int | None:
        fence = self._fences.get(start)
        if fence is not None or self.text[start] == "~":
            return fence
        return self._span_end(start, run_end, last)

    def _comment_end(self, start: int) -> int | None:
        at = start + 2  # <!--> is a comment too (CommonMark 0.31, 6.6)
        return self.text.index(CLOSES, at) + len(CLOSES) if at <= self._last_close else None

    @cached_property
    def _last_close(self) -> int:
        return self.text.rfind(CLOSES)

    @cached_property
    def _fences(self) -> dict[int, int]:
        """Where each fence that is closed opens and ends."""
        if "```" not in self.text and "~~~" not in self.text:
            return {}
        closings: dict[str, list[Span]] = {}
        for mark in _CLOSING.finditer(self.text):
            closings.setdefault(mark[1], []).append(mark.span())
        fences: dict[int, int] = {}
        for mark in _OPENING.finditer(self.text):
            later = closings.get(mark[1], [])
            number = bisect_right(later, mark.end(), key=lambda span: span[0])
            if number < len(later):
                fences[mark.start()] = later[number][1]
        return fences

    @cached_property
    def _openings(self) -> list[int]:
        return list(self._fences)

    def _paragraph_end(self, at: int) -> int:
        """Give where the paragraph ends that stands here: at a blank line or at the next fence."""
        number = bisect_right(self._openings, at)
        fence = self._openings[number] if number < len(self._openings) else len(self.text)
        blank = _BLANK.search(self.text, at, fence)
        return blank.start() if blank else fence

    @cached_property
    def _runs(self) -> list[Span]:
        """Where the runs of backticks are."""
        return [run.span() for run in _TICKS.finditer(self.text)]

    @cached_property
    def _runs_of(self) -> dict[int, list[int]]:
        """Where the runs of each length begin."""
        found: dict[int, list[int]] = {}
        for begin, end in self._runs:
            found.setdefault(end - begin, []).append(begin)
        return found

    def _span_end(self, start: int, run_end: int, last: int) -> int | None:
        """Give the end of the code span that begins in this run of backticks, None for none.

        It closes with the next run of its length. Without one the longest of those that follow
        closes it, if that is shorter: then the backticks too many are part of the code.
        """
        length = run_end - start - self._is_escaped(start)
        alike = self._runs_of.get(length, [])
        number = bisect_left(alike, run_end)
        if number < len(alike) and alike[number] < last:
            return alike[number] + length
        longest, longest_end = 0, None
        for number in range(bisect_left(self._runs, (run_end, 0)), len(self._runs)):
            begin, end = self._runs[number]
            if begin >= last:
                break
            if end - begin > length:
                return None
            if end - begin > longest:
                longest, longest_end = end - begin, end
        return longest_end

    def _is_escaped(self, at: int) -> bool:
        before = at
        while before and self.text[before - 1] == "\\":
            before -= 1
        return (at - before) % 2 == 1


def without_comments(text: str) -> str:
    """Take the comments out, as the page is written; a line that held nothing else is empty."""
    if OPENS not in text:
        return text
    pieces: list[str] = []
    at, begins = 0, True
    for start, end in Unseen(text).comments:
        before, rest = text[at:start], _SPACE.match(text, end)
        begins = not before.rpartition("\n")[2].strip() and (begins or "\n" in before)
        at = rest.end() if rest else end
        inner = "\n" * text.count("\n", start, end)
        if not begins and (inner or text[at : at + 1] in {"", "\n"}):
            before = before.rstrip(" \t")  # two spaces there would break the line
        elif not begins and not before.endswith((" ", "\t")):
            inner = " "  # what it parts stays parted
        begins = begins or "\n" in inner
        pieces += [before, inner]
    return "".join(pieces) + text[at:]


def without_code(text: str) -> str:
    """Turn comments and code into spaces; nothing moves.

    Where lists and tables part a paragraph, code spans end there. Only what is code line by line
    as well as in the whole paragraph is surely code: a link in anything else is looked into.
    """
    if not any(sign in text for sign in (OPENS, "`", "~~~")):
        return text
    if not any(sign in text for sign in (OPENS, "``", "~~~", "\\`")):
        blanked = _SPAN.sub(_spaced, text)
        if "`" not in blanked:  # each begins and ends on its line, so no two readings differ
            return blanked
    unseen = Unseen(text)
    text = _blanked(text, unseen.comments)
    return _blanked(text, _in_both(unseen.code, _by_lines(text))) if unseen.code else text


def spaces(text: str) -> str:
    """As many spaces, the line ends kept."""
    return _NO_LINE_END.sub(" ", text) if "\n" in text else " " * len(text)


def _spaced(found: re.Match[str]) -> str:
    return spaces(found[0])


def _blanked(text: str, spans: Iterable[Span]) -> str:
    pieces: list[str] = []
    at = 0
    for start, end in spans:
        pieces += [text[at:start], spaces(text[start:end])]
        at = end
    return "".join(pieces) + text[at:]


def _by_lines(text: str) -> list[Span]:
    """Give the fenced blocks, indented ones too, and the code spans within one line."""
    found: list[Span] = []
    fence, opened, before = "", 0, 0
    for line in _TOLD.finditer(text):
        at, words = line.start(), line[0]
        mark = _FENCE.match(words)
        if fence and mark and mark[1].startswith(fence) and words.strip() == mark[1]:
            found[before:] = [(opened, line.end())]
            fence = ""
            continue
        if mark and not fence:
            fence, opened, before = mark[1], at, len(found)
        if "`" in words:
            found += [(at + start, at + end) for start, end in Unseen(words).code]
    return found


def _in_both(some: Sequence[Span], others: Sequence[Span]) -> Iterator[Span]:
    """Give what spans of both lists cover; each list is in order."""
    left, right = 0, 0
    while left < len(some) and right < len(others):
        start = max(some[left][0], others[right][0])
        end = min(some[left][1], others[right][1])
        if start < end:
            yield start, end
        if some[left][1] <= others[right][1]:
            left += 1
        else:
            right += 1
