"""A page's file as text, then parted into front matter and body."""

import os
from pathlib import Path

from attrs import frozen

from underhoist.finding import Finding
from underhoist.model.page import Body
from underhoist.place import Place
from underhoist.source.faults import Faults, fault
from underhoist.source.limits import refuse_wild

LARGEST = 1_000_000
"""Bytes. A page of 1 MB is a thousand times a long procedure: something else was saved there."""

LARGEST_FRONT = 100_000
"""Characters of front matter, ten times that of a large unit family."""

FENCE = "---"
UTF_16 = (b"\xff\xfe", b"\xfe\xff")
"""The marks that such a text begins with."""


@frozen
class Parts:
    """Front matter (without its dashes) and body of one page."""

    front: str
    body: Body


def read_bytes(path: Path, file: str) -> bytes:
    """Return what the file holds. Raises Faults where it cannot be opened or is too large."""
    try:
        with path.open("rb") as opened:
            size = os.fstat(opened.fileno()).st_size
            if size > LARGEST:
                raise Faults(_too_large(file, size))
            return opened.read()
    except OSError as error:
        wrong = f"The file cannot be opened: {error.strerror}."
        raise Faults(_unreadable(file, wrong, "Make it readable, or take it out.")) from None


def decoded(data: bytes, file: str) -> str:
    """Return the page's text with plain line ends. Raises Faults for no text or too much."""
    if len(data) > LARGEST:
        raise Faults(_too_large(file, len(data)))
    if data.startswith(UTF_16):
        wrong = "The file is UTF-16 text, which some editors call Unicode."
        raise Faults(_unreadable(file, wrong, "Save it as UTF-8 text."))
    if b"\0" in data:
        wrong = "The file is binary, not text."
        raise Faults(_unreadable(file, wrong, "Save it as text, or give it its own ending."))
    try:
        return data.decode("utf-8-sig").replace("\r\n", "\n").replace("\r", "\n")
    except UnicodeDecodeError as error:
        line = data.count(b"\n", 0, error.start) + 1
        wrong = f"The file is not UTF-8 text: line {line} holds a byte that is not."
        raise Faults(_unreadable(file, wrong, "Save it as UTF-8 text.", line)) from None


def split(text: str, file: str) -> Parts:
    """Front matter and body. Raises Faults without the dashes, and for what no person writes."""
    lines = text.split("\n")
    if lines[0].rstrip() != FENCE:
        wrong = "The page does not begin with front matter."
        mend = "Begin it with a line of three dashes, its keys, and three dashes again."
        raise Faults(fault("front-matter", Place(file, 1, 1), lines[0], wrong, mend))
    for row in range(1, len(lines)):
        if lines[row].rstrip() == FENCE:
            _refuse_large_front(sum(map(len, lines[1:row])), file)
            body = Body("\n".join(lines[row + 1 :]), row + 2)
            refuse_wild(body, file)
            return Parts("\n".join(lines[1:row]), body)
    wrong = "The front matter has no end."
    mend = "Write three dashes on a line of their own below its last key."
    raise Faults(fault("front-matter", Place(file, 1, 1), lines[0], wrong, mend))


def _refuse_large_front(size: int, file: str) -> None:
    if size > LARGEST_FRONT:
        wrong = f"The front matter holds {size // 1000} kB; it holds at most 100 kB."
        mend = "Move text into the body, or part the page."
        raise Faults(fault("front-matter", Place(file, 1, 1), FENCE, wrong, mend))


def _too_large(file: str, size: int) -> Finding:
    wrong = f"The page holds {size / 1_000_000:.1f} MB; a page holds at most 1 MB."
    return _unreadable(file, wrong, "Part it into several pages, or take out what is not text.")


def _unreadable(file: str, wrong: str, mend: str, line: int = 1) -> Finding:
    return fault("unreadable-page", Place(file, line, 1), file, wrong, mend)
