"""What of a complaint is there on which unit family: its causes, its checks, their procedures."""

from collections.abc import Iterable, Mapping

from underhoist.model import Cause, Check, Fault, Manual
from underhoist.model.values import Id
from underhoist.place import Placed

ANY = "any"
"""What is written for every family of the manual."""


def families_of(manual: Manual, fault: Fault) -> tuple[str, ...]:
    """Give the ids of the fault's families that the manual knows; any means all of them."""
    named = [each.value for each in fault.unit_family]
    return tuple(
        manual.families
        if ANY in named
        else dict.fromkeys(id_ for id_ in named if id_ in manual.families)
    )


def families_to_judge(manual: Manual, fault: Fault) -> tuple[str, ...]:
    """Give the fault's families, none while a cause or check names one that is not there."""
    kept = (each.unit_family for each in (*fault.causes.values(), *fault.checks.values()))
    known = {ANY, *manual.families}
    strange = any(id_.value not in known for ids in kept for id_ in ids)
    return () if strange else families_of(manual, fault)


def causes_of(fault: Fault, family: str | None) -> Mapping[str, Cause]:
    """Give the causes that a family has, by id; all of them for None."""
    return {id_: each for id_, each in fault.causes.items() if _is_for(each.unit_family, family)}


def checks_of(manual: Manual, fault: Fault, family: str | None) -> Mapping[str, Check]:
    """Give the checks that can be made on a family, by id; all of them for None.

    A check that says no family of its own is left out where all its procedures are for others.
    """
    return {id_: each for id_, each in fault.checks.items() if _can_make(manual, each, family)}


def procedures_for(
    manual: Manual, ids: Iterable[Placed[Id]], family: str | None
) -> tuple[str, ...]:
    """Give those of these procedures that are for the family; one that is not there is for none."""
    known = (each.value for each in ids if each.value in manual.procedures)
    return tuple(id_ for id_ in known if _is_for(manual.procedures[id_].unit_family, family))


def _can_make(manual: Manual, check: Check, family: str | None) -> bool:
    if check.unit_family:
        return _is_for(check.unit_family, family)
    unknown = [each for each in check.procedure if each.value not in manual.procedures]
    if unknown or not check.procedure:
        return True
    return bool(procedures_for(manual, check.procedure, family))


def _is_for(named: Iterable[Placed[Id]], family: str | None) -> bool:
    ids = {each.value for each in named}
    return family is None or not ids or ANY in ids or family in ids
