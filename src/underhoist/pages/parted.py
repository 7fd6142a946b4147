"""A list that grows with the manual, in parts: no page of it is longer than a few screens."""

from collections.abc import Callable, Iterator, Sequence
from itertools import batched

from markupsafe import Markup

from underhoist.pages.here import Here
from underhoist.pages.html import NOTHING, join, link, section
from underhoist.pages.site import Site

A_PART = 60
"""Entries with a line of text that stand on one page."""

Named = tuple[str, str]
"""The first and the last name of a part."""


def part_address(base: str, number: int) -> str:
    """Address of a part, counted from 1; the first one is the list itself."""
    return base if number == 1 else f"{base}part-{number}/"


def part_title(title: str, number: int) -> str:
    """Title of a part: the first has the list's own."""
    return title if number == 1 else f"{title}, part {number}"


def parted[T](
    site: Site, base: str, things: Sequence[T], name: Callable[[T], str], most: int = A_PART
) -> Iterator[tuple[int, Here, tuple[T, ...], Markup]]:
    """Yield each part: its number, where it stands, what is in it, and the ways to the others.

    `things` come in the order of `name`; there are at most `most` in a part.
    """
    parts = list(batched(things, most, strict=False)) or [()]
    names = [(name(part[0]), name(part[-1])) for part in parts if part]
    for number, part in enumerate(parts, 1):
        here = Here(site, part_address(base, number))
        yield number, here, part, _ways(here, base, number, names)


def _ways(here: Here, base: str, number: int, names: Sequence[Named]) -> Markup:
    """Lead to the parts by the first and last name of each; nothing where there is but one."""
    if len(names) < 2:
        return NOTHING
    items = join(
        Markup("<li>{}</li>").format(
            words if part == number else link(here.to(part_address(base, part)), words)
        )
        for part, words in enumerate((f"{first} to {last}" for first, last in names), 1)
    )
    return section("uh-group", "All parts", Markup("<ul>\n{}\n</ul>").format(items))
