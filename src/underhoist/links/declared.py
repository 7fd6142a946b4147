"""What a page's front matter names, as (scheme, id) with the place where it stands."""

from collections.abc import Iterator

from underhoist.model import Fault, Hazard, Page, Procedure, UnitFamily
from underhoist.place import Placed

Named = tuple[str, Placed[str]]


def declared(page: Page) -> Iterator[Named]:
    """Everything that the front matter of the page refers to by id."""
    match page:
        case Procedure():
            yield from _by_procedure(page)
        case Fault():
            yield from _by_fault(page)
        case UnitFamily():
            for adjustment in page.adjustments.values():
                yield "torque", adjustment.seat
                if adjustment.lock is not None:
                    yield "torque", adjustment.lock
        case Hazard():
            yield from (("tool", tool) for tool in page.required_when.tools)
        case _:
            return


def _by_procedure(page: Procedure) -> Iterator[Named]:
    yield from _families(page.unit_family)
    lists = {
        "tool": page.tools,
        "part": page.parts,
        "torque": page.torques,
        "hazard": page.cautions,
        "procedure": (*page.before, *page.after),
    }
    for scheme, ids in lists.items():
        yield from ((scheme, id_) for id_ in ids)


def _by_fault(page: Fault) -> Iterator[Named]:
    yield from _families(page.unit_family)
    for cause in page.causes.values():
        yield from (("procedure", id_) for id_ in cause.procedures)
    for check in page.checks.values():
        yield from (("procedure", id_) for id_ in check.procedure)


def _families(ids: tuple[Placed[str], ...]) -> Iterator[Named]:
    return (("family", id_) for id_ in ids if id_.value != "any")
