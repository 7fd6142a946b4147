"""Page numbers of a printed book: read from it, written into it, until nothing moves any more.

Chromium prints no page number of another place (`target-counter` of CSS Generated Content for
Paged Media), but it notes in the PDF on which page each place came to stand.
"""

import re
from collections.abc import Callable, Iterable, Mapping
from io import BytesIO
from typing import Any, cast

from pypdf import PdfReader, PdfWriter

from underhoist.project import Unusable

Numbers = Mapping[str, int]
"""Name of a place to its page; the cover is page 1."""

_MOST = 5
"""So often it is printed: each time only a longer number can move a line."""
_LINK = re.compile(r'<a href="#([^"]+)"')


def settled(html: str, printed: Callable[[str], bytes]) -> tuple[bytes, Numbers]:
    """Print until the numbers in the book are those of its pages. Raises Unusable."""
    numbers: Numbers = {}
    for _ in range(_MOST):
        pdf = printed(_numbered(html, numbers))
        found = read(pdf)
        if found == numbers:
            return pdf, numbers
        numbers = found
    raise Unusable("The page numbers of the contents did not settle. Leave something out.")


def read(pdf: bytes) -> Numbers:
    """Return the page of every place that a link leads to."""
    reader = PdfReader(BytesIO(pdf))
    found: dict[str, int] = {}
    for name, place in reader.named_destinations.items():
        number = reader.get_destination_page_number(place)
        if number is not None:
            found[str(name).removeprefix("/")] = number + 1
    return found


def _numbered(html: str, numbers: Numbers) -> str:
    """Give every link the number of the page that it leads to, three figures wide at first."""

    def with_number(found: re.Match[str]) -> str:
        return f'{found[0]} data-at="{numbers.get(found[1], 888)}"'

    return _LINK.sub(with_number, html)


Entries = list[tuple[str, int]]
"""Words and page number of each page of a chapter."""


def with_outline(pdf: bytes, title: str, parts: Iterable[tuple[str, Entries]]) -> bytes:
    """Write the contents into the PDF's own list: chapters, and their pages below them."""
    writer = cast("Any", PdfWriter(clone_from=BytesIO(pdf)))  # its own types are partial
    for heading, entries in parts:
        chapter = writer.add_outline_item(title=heading, page_number=entries[0][1] - 1)
        for words, number in entries:
            writer.add_outline_item(title=words, page_number=number - 1, parent=chapter)
    writer.add_metadata({"/Title": title})
    out = BytesIO()
    writer.write(out)
    return out.getvalue()
