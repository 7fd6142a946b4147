"""A sheet of labels on A4: the page's title, whom it is for, the symbol, the address in text."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

from attrs import frozen
from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup

from underhoist.bound.dress import style
from underhoist.labels.symbol import symbol
from underhoist.links import page_address
from underhoist.model import Manual, Page, Procedure, Tool, UnitFamily
from underhoist.pages import Site
from underhoist.pages.closing import DEMO
from underhoist.project import Unusable


@frozen
class Label:
    """One label."""

    title: str
    what: str
    """Kind of page, and the unit families that it is for."""
    address: str
    """The whole address, as the symbol holds it."""

    @property
    def short(self) -> str:
        """The address as it is typed: a browser adds what is missing."""
        return self.address.removeprefix("https://").rstrip("/")


def labels(
    manual: Manual, base: str, procedures: tuple[str, ...], tools: tuple[str, ...],
    families: tuple[str, ...],
) -> list[Label]:  # fmt: skip
    """Make a label for each page that is named, or for all three kinds where none is.

    Raises Unusable where a name is not in the manual.
    """
    if not (procedures or tools or families):
        families, procedures, tools = (
            tuple(each) for each in (manual.families, manual.procedures, manual.tools)
        )
    return [
        *(_label(manual, base, each) for each in _found("unit family", manual.families, families)),
        *(_label(manual, base, each) for each in _found("procedure", manual.procedures, procedures)),
        *(_label(manual, base, each) for each in _found("tool", manual.tools, tools)),
    ]


def _found[P: Page](what: str, known: dict[str, P] | Any, ids: tuple[str, ...]) -> Iterator[P]:
    for id_ in ids:
        if id_ not in known:
            raise Unusable(
                f"{id_}: the manual has no {what} of that name. It has: {', '.join(sorted(known))}."
            )
        yield known[id_]


def _label(manual: Manual, base: str, page: Page) -> Label:
    return Label(page.title.value, _what(manual, page), base + page_address(page.file))


def _what(manual: Manual, page: Page) -> str:
    if isinstance(page, UnitFamily):
        return "Unit family"
    if isinstance(page, Tool):
        return "Tool"
    if not isinstance(page, Procedure):
        return ""
    known = manual.families
    names = [known[each.value].title.value for each in page.unit_family if each.value in known]
    return ", ".join(names) or "Any unit"


def sheet(site: Site, made: list[Label], modules: Path) -> str:
    """Write the labels as one HTML page that prints on A4; `modules` holds the fonts."""
    drawn: list[tuple[Label, Markup, float]] = [(each, *symbol(each.address)) for each in made]
    env = Environment(
        loader=FileSystemLoader(Path(__file__).parent), autoescape=True, undefined=StrictUndefined
    )
    return env.get_template("sheet.html").render(
        name=site.name,
        demo=DEMO if site.demo else "",
        style=style(modules),
        labels=drawn,
    )
