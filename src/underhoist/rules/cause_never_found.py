"""A cause that no check can find.

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

from collections.abc import Iterator

from underhoist_calculators.fault_finding.complaint import NONE

from underhoist.complaints import bad_shares, names_strangers
from underhoist.finding import Finding, Severity
from underhoist.model import Manual
from underhoist.words import quote

CODE = "cause-never-found"
SEVERITY = Severity.STOP


def check(manual: Manual) -> Iterator[Finding]:
    """Find the causes with which every check is good."""
    for fault in manual.faults.values():
        if any(names_strangers(fault, each) for each in fault.checks.values()):
            continue
        found = {
            id_
            for each in fault.checks.values()
            for id_, share in bad_shares(each).items()
            if share > 0
        }
        for id_, cause in fault.causes.items():
            if id_ != NONE and id_ not in found:
                wrong = f"No check of this page can find {id_}."
                mend = f"Put {id_} under rules_out or bad_with of a check that tells it."
                yield Finding(CODE, SEVERITY, cause.name.at, quote(cause.name.written), wrong, mend)
