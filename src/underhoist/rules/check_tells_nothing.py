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
from underhoist.finding import Finding, Severity
from underhoist.model import Check, Fault, Manual
from underhoist.words import meant, quote

CODE = "check-tells-nothing"
SEVERITY = Severity.STOP


def check(manual: Manual) -> Iterator[Finding]:
    """Find checks that tell nothing, tell two things, or tell of a cause that is not there."""
    for fault in manual.faults.values():
        for each in fault.checks.values():
            yield from _of_check(fault, each)


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


def _strange(fault: Fault, each: Check) -> Iterator[Finding]:
    """Find keys of `bad_with` that are no cause; those of `rules_out` are dead references."""
    known = [*fault.causes, NONE]
    for id_, often in each.bad_with.items():
        if id_ not in known:
            wrong = f"There is no cause {quote(id_)} on this page."
            mend = meant(id_, known, "Write the id of one of the causes above.")
            yield Finding(CODE, SEVERITY, often.at, quote(id_), wrong, mend)
