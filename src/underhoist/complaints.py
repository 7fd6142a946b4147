"""From a fault page to what the search for its cause works on."""

from underhoist_calculators.fault_finding.complaint import (
    Cause,
    Check,
    Complaint,
    ComplaintError,
    Level,
)

from underhoist.model import Check as CheckKeys
from underhoist.model import Fault, Manual


def complaint_of(manual: Manual, fault: Fault) -> Complaint | None:
    """Give the complaint of a page, None where its tables do not add up."""
    causes = tuple(
        Cause(
            id=id_,
            name=each.name.value,
            share=each.likelihood.value,
            mend_minutes=each.mend_minutes.value if each.mend_minutes else 0,
        )
        for id_, each in fault.causes.items()
    )
    checks = tuple(
        Check(
            id=id_,
            name=each.name.value,
            minutes=each.minutes.value,
            access=each.access.value,
            bad=bad_shares(each),
        )
        for id_, each in fault.checks.items()
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


def bad_shares(check: CheckKeys) -> dict[str, float]:
    """Give how often the check is bad with each cause: always with what a good one rules out."""
    told = {id_: share.value for id_, share in check.bad_with.items()}
    return dict.fromkeys((each.value for each in check.rules_out), 1.0) | told


def names_strangers(fault: Fault, check: CheckKeys) -> bool:
    """Whether a check rules out what is no cause here: until that is mended it may mean any."""
    return any(each.value not in fault.causes for each in check.rules_out)
