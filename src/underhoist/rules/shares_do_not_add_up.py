"""Likelihoods of causes that do not add up.

Of a hundred such complaints each has one cause, so the likelihoods make 100 % or less. What they
leave is none of these. Where `none-of-these` is a cause of its own, all make exactly 100 %. Causes
that only some unit families have count for those; the family that has most makes the hundred.

Good:

```yaml title="faults/late-shifts.md"
causes:
  worn-band: {name: Worn band, likelihood: 60 %, procedures: [set-band]}
  none-of-these: {name: None of these, likelihood: 40 %}
```

Bad:

```yaml title="faults/late-shifts.md"
causes:
  worn-band: {name: Worn band, likelihood: 80 %, procedures: [set-band]}
  none-of-these: {name: None of these, likelihood: 40 %}
```
"""

from collections.abc import Iterator
from math import isclose

from underhoist_calculators.fault_finding.complaint import NONE

from underhoist.complaints import totals
from underhoist.fault_families import causes_of
from underhoist.finding import Finding, Severity
from underhoist.model import Fault, Manual
from underhoist.rules._pages import Pages

CODE = "shares-do-not-add-up"
SEVERITY = Severity.STOP
PAGES = Pages((Fault,))


def check_page(manual: Manual, fault: Fault) -> Iterator[Finding]:
    """Find faults whose likelihoods make too much, or too little where none is left over."""
    by_family = totals(fault)
    family, total = max(by_family.items(), key=lambda each: each[1])
    causes = list(causes_of(fault, family).values())
    exact = NONE in fault.causes
    if isclose(total, 1, abs_tol=1e-9) or (total < 1 and not exact):
        return
    last = fault.causes[NONE] if exact else causes[-1]
    whose = f"the {family} on this page" if family and len(by_family) > 1 else "this page"
    wrong = f"The likelihoods of {whose} make {_percent(total)}."
    mend = "Take some away until they make 100 % or less."
    if exact:
        mend = "With none-of-these they make exactly 100 %."
        left = 1 - (total - last.likelihood.value)
        if left >= 0:
            mend = f"Write {_percent(left)} here, or change the others: they make 100 %."
    yield Finding(CODE, SEVERITY, last.likelihood.at, last.likelihood.written, wrong, mend)


def _percent(share: float) -> str:
    return f"{round(100 * share, 6):g} %"
