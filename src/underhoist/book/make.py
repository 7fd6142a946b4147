"""Makes the book: its text as one HTML document, printed by Chromium."""

import hashlib
from collections.abc import Iterator
from pathlib import Path

from attrs import evolve, frozen
from jinja2 import Environment, FileSystemLoader, StrictUndefined

from underhoist.book.numbers import settled, with_outline
from underhoist.book.torques import torque_rows
from underhoist.bound import Binder, Group, grouped, name_of
from underhoist.bound.dress import pictures, style
from underhoist.bound.headless import printed
from underhoist.history.dates import in_words, today
from underhoist.pages import Sheet, Site
from underhoist.pages.closing import DEMO, SAFETY

_WITHOUT = ("uh-changes", "uh-used", "uh-presets", "uh-jumps", "uh-safety", "uh-calculators",
            "uh-calc", "uh-search", "uh-faults", "uh-procedures", "uh-families")  # fmt: skip
"""What paper has no use for: who leads here, what is tapped, what every foot says already."""
_LEFT_OUT = frozenset({"calculator", "torque"})
"""Kinds without a page: a calculator does not answer on paper, torques stand in one table."""
_OWN_PAGE = frozenset({"unit-family", "procedure", "fault"})
TORQUES = "torques"
"""Name of the table of torques."""


@frozen
class Book:
    """A book as PDF."""

    pdf: bytes
    pages: int
    """Pages of the manual that are in it."""
    leaves: int
    """Pages of paper."""


def book(site: Site, sheets: list[Sheet], modules: Path, *, subject: str = "") -> Book:
    """Print these pages as a book; `subject` says on its cover which part of the manual it is.

    Raises Unusable where there is no Chromium.
    """
    held = [each for each in sheets if each.kind not in _LEFT_OUT and each.address]
    groups = list(_in_order(site, held))
    names = {sheet.address: name_of(sheet.address) for sheet in held}
    names |= {each.address: TORQUES for each in sheets if each.kind == "torque"}
    bind = Binder(names, pictures(site.folder), _WITHOUT)
    bound = {sheet.address: bind.bound(sheet) for sheet in held}
    revision = hashlib.sha256("".join(bound.values()).encode()).hexdigest()[:10]
    html = (
        _template()
        .get_template("book.html")
        .render(
            name=site.name,
            subject=subject,
            day=in_words(today()),
            revision=revision,
            demo=DEMO if site.demo else "",
            safety=SAFETY,
            style=style(modules),
            own_style=Path(__file__).with_name("book.css").read_text(encoding="utf-8"),
            groups=groups,
            own_page=_OWN_PAGE,
            name_of=name_of,
            bound=bound,
            torques=list(torque_rows(site, held)),
            quoted=_quoted,
        )
    )
    pdf, numbers = settled(html, printed)
    parts = [(TORQUES.capitalize(), [("Torques", numbers[TORQUES])])] if TORQUES in numbers else []
    parts += [
        (each.heading, [(at.title, numbers[name_of(at.address)]) for at in each.sheets])
        for each in groups
    ]
    title = f"{site.name}, {subject}" if subject else site.name
    leaves = max(numbers.values(), default=0)
    return Book(with_outline(pdf, title, parts), len(held), leaves)


def _in_order(site: Site, sheets: list[Sheet]) -> Iterator[Group]:
    """Yield the chapters; procedures stand by their area of work, as in the site's list."""
    areas = {each.title.value: each.area.value for each in site.manual.procedures.values()}
    for group in grouped(sheets):
        if group.kind == "procedure":
            by_area = sorted(group.sheets, key=lambda each: (areas[each.title], each.title))
            yield evolve(group, sheets=tuple(by_area))
        else:
            yield evolve(group, sheets=tuple(sorted(group.sheets, key=lambda each: each.title)))


def _quoted(text: str) -> str:
    """Write a text as a string of CSS."""
    return '"' + text.replace("\\", r"\\").replace('"', r"\"").replace("<", r"\3c ") + '"'


def _template() -> Environment:
    return Environment(
        loader=FileSystemLoader(Path(__file__).parent), autoescape=True, undefined=StrictUndefined
    )
