"""From a fault page to what the search for its cause works on, one unit family at a time."""

from collections.abc import Mapping

from attrs import evolve
from underhoist_calculators.fault_finding.complaint import (
    NONE,
    Cause,
    Check,
    Complaint,
    ComplaintError,
    Level,
)

from underhoist.fault_families import causes_of, checks_of
from underhoist.model import Check as CheckKeys
from underhoist.model import Fault, Manual


def complaint_of(manual: Manual, fault: Fault, family: str | None = None) -> Complaint | None:
    """Give the complaint as this unit family has it, the whole page for None.

    None where its tables do not add up.
    """
    causes = _causes(fault, family)
    there = {each.id for each in causes} | {NONE}
    checks = tuple(
        Check(
            id=id_,
            name=each.name.value,
            minutes=each.minutes.value,
            access=each.access.value,
            bad=_those(there, fault, each),
        )
        for id_, each in checks_of(manual, fault, family).items()
    )
    levels = {
        name: Level(
            name=name,
            minutes=each.minutes.value,
            through=each.through.value if each.through else None,
        )
        for name, each in manual.access.items()
    }
    try:
        return Complaint(causes=causes, checks=checks, levels=levels)
    except ComplaintError:
        return None


def _causes(fault: Fault, family: str | None) -> tuple[Cause, ...]:
    """Give the family's causes; those of one that lacks some are made up to the hundred again."""
    causes = tuple(
        Cause(
            id=id_,
            name=each.name.value,
            share=each.likelihood.value,
            mend_minutes=each.mend_minutes.value if each.mend_minutes else 0,
        )
        for id_, each in causes_of(fault, family).items()
    )
    lacking = len(fault.causes) - len(causes)
    total = sum(each.share for each in causes) + _none_left(fault)
    if not lacking or not 0 < total < 1:
        return causes
    return tuple(evolve(each, share=each.share / total) for each in causes)


def _none_left(fault: Fault) -> float:
    """Give what the page's fullest table leaves to none of these, 0 where it says so itself."""
    return 0.0 if NONE in fault.causes else max(0.0, 1 - fullest(fault))


def fullest(fault: Fault) -> float:
    """Give what the likelihoods make in the unit family that has most of them."""
    return max(totals(fault).values())


def totals(fault: Fault) -> dict[str | None, float]:
    """Give what the likelihoods make in each unit family that a cause is kept to, and elsewhere."""
    kept = {id_.value for each in fault.causes.values() for id_ in each.unit_family}
    named = {each.value for each in fault.unit_family}
    families = [*(named & kept or kept), *([None] if not kept or named - kept else [])]
    return {
        family: sum(
            each.likelihood.value
            for each in fault.causes.values()
            if not each.unit_family or any(id_.value == family for id_ in each.unit_family)
        )
        for family in families
    }


def _those(there: set[str], fault: Fault, check: CheckKeys) -> Mapping[str, float]:
    """Leave out the page's causes that this family does not have; strangers stay, to be refused."""
    elsewhere = fault.causes.keys() - there
    return {id_: share for id_, share in bad_shares(check).items() if id_ not in elsewhere}


def bad_shares(check: CheckKeys) -> dict[str, float]:
    """Give how often the check is bad with each cause: always with what a good one rules out."""
    told = {id_: share.value for id_, share in check.bad_with.items()}
    return dict.fromkeys((each.value for each in check.rules_out), 1.0) | told


def names_strangers(fault: Fault, check: CheckKeys) -> bool:
    """Whether a check rules out what is no cause here: until that is mended it may mean any."""
    return any(each.value not in fault.causes for each in check.rules_out)
