"""A cause that no check can find.

Each unit family has its own table: the causes and checks that it has. A check is left out where all
its procedures are for other families, unless its own `unit_family` says otherwise.

The order of the checks leads to causes. One that no check rules out, and that makes none of them
bad, is never named: the search ends with "none of these" although it was on the list.

Good:

```yaml title="faults/late-shifts.md"
checks:
  count: {name: Count the turns, minutes: 10, access: on the hoist, bad_with: {worn-band: mostly}}
```

Bad:

```yaml title="faults/late-shifts.md"
causes:
  worn-band: {name: Worn band, likelihood: 40 %, procedures: [set-band]}
  weak-governor: {name: Governor sticking, likelihood: 10 %}
```
"""

from collections.abc import Iterable, Iterator

from underhoist_calculators.fault_finding.complaint import NONE

from underhoist.complaints import bad_shares, names_strangers
from underhoist.fault_families import causes_of, checks_of, families_to_judge
from underhoist.finding import Finding, Severity
from underhoist.model import Cause, Check, Fault, Manual
from underhoist.rules._pages import Pages
from underhoist.words import listing, quote

CODE = "cause-never-found"
SEVERITY = Severity.STOP
PAGES = Pages((Fault,))


def check_page(manual: Manual, fault: Fault) -> Iterator[Finding]:
    """Find the causes with which every check is good."""
    if any(names_strangers(fault, each) for each in fault.checks.values()):
        return
    for id_, cause in fault.causes.items():
        if id_ != NONE:
            yield from _of_cause(manual, fault, id_, cause)


def _of_cause(manual: Manual, fault: Fault, id_: str, cause: Cause) -> Iterator[Finding]:
    at, written = cause.name.at, quote(cause.name.written)
    if id_ not in _found(fault.checks.values()):
        wrong = f"No check of this page can find {id_}."
        mend = f"Put {id_} under rules_out or bad_with of a check that tells it."
        yield Finding(CODE, SEVERITY, at, written, wrong, mend)
        return
    whole = families_to_judge(manual, fault)
    having = [family for family in whole if id_ in causes_of(fault, family)]
    if whole and not having:
        wrong = f"No unit family of this page has {id_}."
        mend = f"The page is for {listing(whole)}: name those that have it under unit_family."
        yield Finding(CODE, SEVERITY, at, written, wrong, mend)
    families = [
        family for family in having if id_ not in _found(checks_of(manual, fault, family).values())
    ]
    if families:
        wrong = f"No check that is made on the {listing(families, 'or')} can find {id_}."
        mend = f"Name the families that have it under unit_family of {id_}, or those on which it "
        mend += "is made under unit_family of a check that finds it."
        yield Finding(CODE, SEVERITY, at, written, wrong, mend)


def _found(checks: Iterable[Check]) -> set[str]:
    """Give the causes with which one of these checks can be bad."""
    return {id_ for each in checks for id_, share in bad_shares(each).items() if share > 0}
