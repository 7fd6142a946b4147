"""The pages of one document in the order of their kinds."""

from collections.abc import Iterable, Iterator

from attrs import frozen

from underhoist.pages import Sheet

_GROUPS = (
    ("unit-family", "Unit families", "families"),
    ("procedure", "Procedures", "procedures"),
    ("fault", "Faults", "faults"),
    ("calculator", "Calculators", "calculators"),
    ("torque", "Torques", "torques"),
    ("part", "Parts", "parts"),
    ("fluid", "Fluids", "fluids"),
    ("tool", "Tools", "tools"),
    ("hazard", "Hazards", "hazards"),
    ("page", "Other pages", "pages"),
)
"""Kind, heading and name of each group; the name is also that of the site's list of the kind."""

KINDS = tuple(kind for kind, _, _ in _GROUPS)
"""The kinds of pages that a document may hold."""


@frozen
class Group:
    """All pages of one kind, at least one."""

    kind: str
    heading: str
    name: str
    sheets: tuple[Sheet, ...]


def grouped(sheets: Iterable[Sheet]) -> Iterator[Group]:
    """Yield the groups that hold a page, the pages in the order in which they are given."""
    held = list(sheets)
    for kind, heading, name in _GROUPS:
        if of_kind := tuple(sheet for sheet in held if sheet.kind == kind):
            yield Group(kind, heading, name, of_kind)
