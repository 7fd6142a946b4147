"""A sheet of labels on A4: the page's title, whom it is for, the symbol, the address in text."""

from collections.abc import Iterator, Mapping
from pathlib import Path

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


@frozen(kw_only=True)
class Wanted:
    """The ids of the pages that get a label; nothing means all of the three kinds."""

    families: tuple[str, ...] = ()
    procedures: tuple[str, ...] = ()
    tools: tuple[str, ...] = ()


def labels(manual: Manual, base: str, wanted: Wanted) -> list[Label]:
    """Make a label for each page that is wanted. Raises Unusable where one is not there."""
    if wanted == Wanted():
        wanted = Wanted(
            families=tuple(manual.families),
            procedures=tuple(manual.procedures),
            tools=tuple(manual.tools),
        )
    pages: list[Page] = [
        *_found("unit family", manual.families, wanted.families),
        *_found("procedure", manual.procedures, wanted.procedures),
        *_found("tool", manual.tools, wanted.tools),
    ]
    return [
        Label(page.title.value, _what(manual, page), base + page_address(page.file))
        for page in pages
    ]


def _found[P: Page](what: str, known: Mapping[str, P], ids: tuple[str, ...]) -> Iterator[P]:
    for id_ in ids:
        if id_ not in known:
            raise Unusable(
                f"{id_}: the manual has no {what} of that name. It has: {', '.join(sorted(known))}."
            )
        yield known[id_]


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
