"""A check whose result says nothing about the causes.

A check that rules nothing out, or that is bad equally often with every cause, costs its minutes and
leaves everything as it was. So it never comes in the order that is computed. A cause that stands
both under `rules_out` and under `bad_with` is told two things.

Good:

```yaml title="faults/late-shifts.md"
checks:
  count: {name: Count the turns, minutes: 10, access: on the hoist, rules_out: [worn-band]}
```

Bad:

```yaml title="faults/late-shifts.md"
checks:
  count: {name: Count the turns, minutes: 10, access: on the hoist, rules_out: [worn-band]}
  drive: {name: Drive it, minutes: 20, access: road test}
```
"""

from collections.abc import Iterator

from underhoist_calculators.fault_finding.complaint import NONE

from underhoist.complaints import bad_shares, names_strangers
from underhoist.fault_families import causes_of, checks_of, families_to_judge
from underhoist.finding import Finding, Severity
from underhoist.model import Check, Fault, Manual
from underhoist.rules._pages import Pages
from underhoist.words import listing, meant, quote

CODE = "check-tells-nothing"
SEVERITY = Severity.STOP
PAGES = Pages((Fault,))


def check_page(manual: Manual, fault: Fault) -> Iterator[Finding]:
    """Find checks that tell nothing, tell two things, or tell of a cause that is not there."""
    for id_, each in fault.checks.items():
        yield from _of_check(fault, each)
        yield from _on_families(manual, fault, id_)


def _of_check(fault: Fault, each: Check) -> Iterator[Finding]:
    yield from _strange(fault, each)
    ruled_out = {id_.value for id_ in each.rules_out}
    for id_, often in each.bad_with.items():
        if id_ in ruled_out:
            wrong = f"A good result rules {id_} out already, so it is always bad with it."
            mend = f"Keep {id_} in one of the two places."
            yield Finding(CODE, SEVERITY, often.at, often.written, wrong, mend)
    if names_strangers(fault, each):
        return
    told = bad_shares(each)
    shares = {told.get(id_, 0.0) for id_ in {*fault.causes, NONE}}
    if len(shares) == 1:
        wrong = "Its result says the same about every cause."
        mend = "Write under rules_out or bad_with what it tells, or take the check out."
        yield Finding(CODE, SEVERITY, each.name.at, quote(each.name.written), wrong, mend)


def _on_families(manual: Manual, fault: Fault, check_id: str) -> Iterator[Finding]:
    """Find the families that have none of the causes that a check is about, yet have the check."""
    each = fault.checks[check_id]
    whole = families_to_judge(manual, fault)
    made = [family for family in whole if check_id in checks_of(manual, fault, family)]
    if whole and not made:
        wrong = "It is made on no unit family of this page."
        mend = f"The page is for {listing(whole)}: name a procedure for one of them, or name them "
        mend += "under unit_family of the check."
        yield Finding(CODE, SEVERITY, each.name.at, quote(each.name.written), wrong, mend)
    told = {id_ for id_, share in bad_shares(each).items() if share > 0} & fault.causes.keys()
    families = [family for family in made if told and not told & causes_of(fault, family).keys()]
    if families:
        wrong = f"The {listing(families, 'or')} has none of the causes that this check tells."
        mend = "Name under unit_family of the check the families on which it is made."
        yield Finding(CODE, SEVERITY, each.name.at, quote(each.name.written), wrong, mend)


def _strange(fault: Fault, each: Check) -> Iterator[Finding]:
    """Find keys of `bad_with` that are no cause; those of `rules_out` are dead references."""
    known = [*fault.causes, NONE]
    for id_, often in each.bad_with.items():
        if id_ not in known:
            wrong = f"There is no cause {quote(id_)} on this page."
            mend = meant(id_, known, "Write the id of one of the causes above.")
            yield Finding(CODE, SEVERITY, often.at, quote(id_), wrong, mend)
