"""What a card may choose from: families, procedures, and the complaints with what they propose."""

from collections.abc import Iterable

from underhoist_calculators.units import show

from underhoist.cards.data import FORMAT, Json
from underhoist.cards.work_order import goes_with, work_order
from underhoist.model import Fault, Manual, UnitFamily

_LISTED = ("id", "title", "family", "area", "minutes", "url", "revision", "before", "after")


def index(manual: Manual, procedures: Iterable[Json]) -> Json:
    """List it all; `procedures` are what `data` made and their revisions, in the order to offer."""
    listed = [{key: made[key] for key in _LISTED} for made in procedures]
    known = {made["id"] for made in listed}
    rank = {id_: number for number, id_ in enumerate(work_order(manual))}
    along = goes_with(manual)
    for entry in listed:
        id_ = str(entry["id"])
        entry |= {"rank": rank[id_], "with": [each for each in along[id_] if each in known]}
    return {
        "format": FORMAT,
        "families": [_family(family) for family in manual.families.values()],
        "procedures": listed,
        "faults": [_fault(fault, known) for fault in manual.faults.values()],
    }


def _family(family: UnitFamily) -> Json:
    return {
        "id": family.id,
        "title": family.title.value,
        "tyre": family.reference.tyre.value,
        "axle": str(family.reference.axle),
        "between_marks": show(family.fluid.level.between_marks.value),
    }


def _fault(fault: Fault, known: set[object]) -> Json:
    """List what its checks use, as written, and what mends the likeliest cause first.

    Which check comes first is worked out on the card, from the results so far.
    """
    checks = [each.value for check in fault.checks.values() for each in check.procedure]
    causes = sorted(fault.causes.values(), key=lambda cause: -cause.likelihood.value)
    mends = [procedure.value for cause in causes for procedure in cause.procedures]
    return {
        "id": fault.id,
        "title": fault.title.value,
        "complaint": fault.complaint.value,
        "family": [each.value for each in fault.unit_family],
        "checks": [id_ for id_ in dict.fromkeys(checks) if id_ in known],
        "mends": [id_ for id_ in dict.fromkeys(mends) if id_ in known],
    }
