"""Makes the book: its text as one HTML document, printed by Chromium."""

import hashlib
from functools import partial
from pathlib import Path

from attrs import frozen
from jinja2 import Environment, FileSystemLoader, StrictUndefined

from underhoist.book.contents import runs
from underhoist.book.forms import Part, form_parts
from underhoist.book.index import index
from underhoist.book.numbers import settled, with_outline
from underhoist.book.together import together
from underhoist.book.torques import torque_rows
from underhoist.bound import Binder, grouped, name_of
from underhoist.bound.dress import pictures, style
from underhoist.bound.headless import printed
from underhoist.history.dates import in_words, today
from underhoist.pages import Sheet, Site
from underhoist.pages.closing import DEMO, SAFETY

_WITHOUT = ("uh-changes", "uh-used", "uh-presets", "uh-jumps", "uh-safety", "uh-calculators",
            "uh-calc", "uh-find", "uh-search", "uh-faults", "uh-procedures",
            "uh-families")  # fmt: skip
"""What paper has no use for: who leads here, what is tapped, what every foot says already."""
_LEFT_OUT = frozenset({"torque"})
"""Kinds without a page: torques stand in one table."""
_OWN_PAGE = frozenset({"unit-family", "procedure", "fault"})
TORQUES, INDEX, JOB = "torques", "index", "job-sheet"
"""Names of the table of torques, the index and the sheet to copy."""
_BACK = (("Index", INDEX), ("Job sheet", JOB))
_STYLES = ("book.css", "chapters.css")


@frozen
class Book:
    """A book as PDF."""

    pdf: bytes
    pages: int
    """Pages of the manual that are in it."""
    leaves: int
    """Pages of paper."""


def book(site: Site, sheets: list[Sheet], modules: Path, *, subject: str = "") -> Book:
    """Print these pages as a book, each kind in the order given.

    `subject` says on its cover which part of the manual it is. Raises Unusable where there is no
    Chromium.
    """
    held = [each for each in sheets if each.kind not in _LEFT_OUT and each.address]
    groups = list(grouped(held))
    held = [each for group in groups for each in group.sheets]
    names = {sheet.address: name_of(sheet.address) for sheet in held}
    names |= {each.address: TORQUES for each in sheets if each.kind == "torque"}
    bind = Binder(names, pictures(site.folder), _WITHOUT, filled_in=False)
    bound = {sheet.address: together(bind.bound(sheet)) for sheet in held}
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
            own_style=_own_style(),
            groups=groups,
            own_page=_OWN_PAGE,
            name_of=name_of,
            runs=partial(runs, site.manual),
            bound=bound,
            forms=_forms(site, held),
            torques=list(torque_rows(site, held)),
            index=index(site, held),
            quoted=_quoted,
        )
    )
    pdf, numbers = settled(html, printed)
    parts = [(TORQUES.capitalize(), [("Torques", numbers[TORQUES])])] if TORQUES in numbers else []
    parts += [
        (each.heading, [(at.title, numbers[name_of(at.address)]) for at in each.sheets])
        for each in groups
    ]
    parts += [(name, [(name, numbers[at])]) for name, at in _BACK if at in numbers]
    title = f"{site.name}, {subject}" if subject else site.name
    leaves = max(numbers.values(), default=0)
    return Book(with_outline(pdf, title, parts), len(held), leaves)


def _forms(site: Site, sheets: list[Sheet]) -> dict[str, list[Part]]:
    """Make the blank form of each calculator, by the address of its page."""
    named = {f"calculators/{name}/": each for name, each in site.calculators.items()}
    return {
        each.address: list(form_parts(named[each.address]))
        for each in sheets
        if each.kind == "calculator"
    }


def _own_style() -> str:
    folder = Path(__file__).parent
    return "".join((folder / name).read_text(encoding="utf-8") for name in _STYLES)


def _quoted(text: str) -> str:
    """Write a text as a string of CSS."""
    return '"' + text.replace("\\", r"\\").replace('"', r"\"").replace("<", r"\3c ") + '"'


def _template() -> Environment:
    return Environment(
        loader=FileSystemLoader(Path(__file__).parent), autoescape=True, undefined=StrictUndefined
    )
