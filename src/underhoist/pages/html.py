"""Small pieces of HTML that many pages share; everything put in is escaped."""

import re
from collections.abc import Iterable, Mapping

from markupsafe import Markup

NOTHING = Markup("")

_ONE_ELEMENT = re.compile(r"<(\w+)\b[^>]*>(?:(?!<\1\b).)*</\1>", re.DOTALL)
"""Markup that is one element and nothing beside it."""


def join(parts: Iterable[str], between: str = "\n") -> Markup:
    """Write the parts one after the other, empty ones left out, plain text escaped."""
    return Markup(between).join(part for part in parts if part)  # noqa: S704 - our own separators


def section(name: str, heading: str, *parts: str, id_: str = "") -> Markup:
    """Write a section of class `name` under a heading; nothing where it would be empty."""
    inner = join(parts)
    if not inner:
        return NOTHING
    title = Markup("<h2{}>{}</h2>").format(Markup(' id="{}"').format(id_) if id_ else "", heading)
    return Markup('<section class="{}">\n{}\n{}\n</section>').format(name, title, inner)


def link(href: str, words: str) -> Markup:
    """Write a plain link."""
    return Markup('<a href="{}">{}</a>').format(href, words)


def entry(href: str, title: str, *notes: str) -> Markup:
    """One entry of a list of contents, with notes below its link."""
    lines = join((Markup("<p>{}</p>").format(note) for note in notes if note), "")
    return Markup('<li><a href="{}">{}</a>{}</li>').format(href, title, lines)


def contents(entries: Iterable[Markup]) -> Markup:
    """Write a list of contents; nothing where there are no entries."""
    items = join(entries)
    return Markup('<ul class="uh-contents">\n{}\n</ul>').format(items) if items else NOTHING


def jumps(label: str, places: Mapping[str, str]) -> Markup:
    """Write links to places of this page, given as anchor to words, for a page of many screens."""
    return ways(label, {f"#{at}": words for at, words in places.items()})


def ways(label: str, places: Mapping[str, str]) -> Markup:
    """Write links of a word or two, given as address to words, several to a line."""
    items = join(
        (Markup("<li>{}</li>").format(link(at, words)) for at, words in places.items()), ""
    )
    nav = '<nav class="uh-jumps" aria-label="{}"><ul>{}</ul></nav>'
    return Markup(nav).format(label, items) if items else NOTHING  # noqa: S704 - written here


def facts(*words: str) -> Markup:
    """One line of small facts."""
    given = join(words, " · ")
    return Markup('<p class="uh-facts">{}</p>').format(given) if given else NOTHING


def table(name: str, heads: Iterable[str], rows: Iterable[Iterable[str]], caption: str) -> Markup:
    """Write a table whose first cell names its row; the others carry their column's name."""
    columns = list(heads)
    head = join((Markup('<th scope="col">{}</th>').format(text) for text in columns), "")
    body = join(_row(columns, list(cells)) for cells in rows)
    if not body:
        return NOTHING
    return Markup(
        '<table class="{}">\n<caption>{}</caption>\n<thead><tr>{}</tr></thead>\n'
        "<tbody>\n{}\n</tbody>\n</table>"
    ).format(name, caption, head, body)


def _row(columns: list[str], cells: list[str]) -> Markup:
    first, *rest = cells
    named = join(
        (
            Markup('<td data-label="{}">{}</td>').format(column, _held_together(cell))
            for column, cell in zip(columns[1:], rest, strict=True)
        ),
        "",
    )
    return Markup('<tr><th scope="row">{}</th>{}</tr>').format(first, named)


def _held_together(cell: str) -> str:
    """Put mixed text and markup into one element: on a phone each would be a column."""
    plain = not isinstance(cell, Markup) or "<" not in cell
    return cell if plain or _ONE_ELEMENT.fullmatch(cell) else Markup("<span>{}</span>").format(cell)
