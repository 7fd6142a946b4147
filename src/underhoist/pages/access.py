"""How far in checks go, as a table, with the minutes of the whole way."""

from collections.abc import Iterable, Mapping

from markupsafe import Markup

from underhoist.model import Access, PlainPage
from underhoist.pages.here import Here
from underhoist.pages.html import NOTHING, link, table


def access_table(here: Here, page: PlainPage) -> Markup:
    """Write the words that the page declares; nothing where it declares none."""
    rows = (_row(here, name, each) for name, each in page.access.items())
    heads = ("Word", "What it means", "How to get there", "Minutes to get there")
    return table("uh-table", heads, rows, "How far in, and the minutes of the whole way")


def whole_minutes(declared: Mapping[str, Access], name: str) -> int:
    """Add up the minutes of the way from the start; a way through itself is counted once."""
    seen: set[str] = set()
    total = 0
    while name in declared and name not in seen:
        seen.add(name)
        total += declared[name].minutes.value
        through = declared[name].through
        name = through.value if through else ""
    return total


def _row(here: Here, name: str, access: Access) -> Iterable[str]:
    target = here.target("procedure", access.procedure.value) if access.procedure else None
    total = whole_minutes(here.site.manual.access, name)
    through = f", {access.through.value} included" if access.through else ""
    return (
        name,
        access.meaning.value if access.meaning else "",
        link(here.to_target(target), target.title) if target else NOTHING,
        f"{total}{through}",
    )
