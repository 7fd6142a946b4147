"""All torques of a book in one table, where inch and foot cannot be taken for each other."""

from collections.abc import Iterable, Iterator

from attrs import frozen

from underhoist.bound import name_of
from underhoist.links import page_address
from underhoist.model import Fastener, Procedure, UnitFamily
from underhoist.pages import Sheet, Site
from underhoist.pages.torque_units import lead

_MARKS = {"pound-force inches": "INCH", "pound-force feet": "FOOT"}
"""What stands in a box beside the units that are taken for each other."""


@frozen
class Row:
    """One torque: the number, its unit in words, the other units."""

    name: str
    number: str
    words: str
    mark: str
    """"INCH" or "FOOT" for the two that differ by twelve times, else empty."""
    others: str
    notes: str
    """Thread, count and what the author notes."""


@frozen
class Rows:
    """The torques that stand on one page."""

    title: str
    place: str
    """Name of the page in the book."""
    rows: tuple[Row, ...]


def torque_rows(site: Site, sheets: Iterable[Sheet]) -> Iterator[Rows]:
    """Yield the torques of the unit families and procedures that are in the book, in its order."""
    owners: dict[str, UnitFamily | Procedure] = {
        page_address(owner.file): owner
        for owner in (*site.manual.families.values(), *site.manual.procedures.values())
    }
    for sheet in sheets:
        owner = owners.get(sheet.address)
        if owner and owner.fasteners:
            rows = tuple(_row(each) for each in owner.fasteners.values())
            yield Rows(owner.title.value, name_of(sheet.address), rows)


def _row(fastener: Fastener) -> Row:
    value = lead(fastener.torque.value, ())
    count = fastener.count.value if fastener.count else 0
    notes = (
        fastener.thread.value if fastener.thread else "",
        f"{count} of them" if count > 1 else "",
        fastener.note.value if fastener.note else "",
    )
    return Row(
        name=fastener.name.value,
        number=value.number,
        words=value.words,
        mark=_MARKS.get(value.words, ""),
        others=" · ".join(each.replace(" ", "\N{NO-BREAK SPACE}") for each in value.others),
        notes=" · ".join(filter(None, notes)),
    )
