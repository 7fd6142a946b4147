"""How far in checks go, as a table, with the minutes of the whole way."""

from collections.abc import Iterable

from markupsafe import Markup

from underhoist.model import Access, PlainPage, whole_minutes
from underhoist.pages.here import Here
from underhoist.pages.html import link, table


def access_table(here: Here, page: PlainPage) -> Markup:
    """Write the words that the page declares; nothing where it declares none."""
    rows = (_row(here, name, each) for name, each in page.access.items())
    heads = ("Word", "Means", "First", "Minutes")
    return table("uh-table", heads, rows, "How far in, and the minutes of the whole way")


def _row(here: Here, name: str, access: Access) -> Iterable[str]:
    target = here.target("procedure", access.procedure.value) if access.procedure else None
    total = whole_minutes(here.site.manual.access, name)
    through = f", {access.through.value} included" if access.through else ""
    return (
        name,
        access.meaning.value if access.meaning else "",
        link(here.to_target(target), target.title) if target else "nothing",
        f"{total}{through}",
    )
