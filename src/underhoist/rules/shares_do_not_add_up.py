"""Likelihoods of causes that do not add up.

Of a hundred such complaints each has one cause, so the likelihoods make 100 % or less. What they
leave is none of these. Where `none-of-these` is a cause of its own, all make exactly 100 %.

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

from underhoist.finding import Finding, Severity
from underhoist.model import Manual

CODE = "shares-do-not-add-up"
SEVERITY = Severity.STOP


def check(manual: Manual) -> Iterator[Finding]:
    """Find faults whose likelihoods make too much, or too little where none is left over."""
    for fault in manual.faults.values():
        causes = list(fault.causes.values())
        total = sum(each.likelihood.value for each in causes)
        exact = NONE in fault.causes
        if isclose(total, 1, abs_tol=1e-9) or (total < 1 and not exact):
            continue
        last = fault.causes[NONE] if exact else causes[-1]
        wrong = f"The likelihoods of this page make {_percent(total)}."
        mend = "Take some away until they make 100 % or less."
        if exact:
            mend = "With none-of-these they make exactly 100 %."
            left = 1 - (total - last.likelihood.value)
            if left >= 0:
                mend = f"Write {_percent(left)} here, or change the others: they make 100 %."
        yield Finding(CODE, SEVERITY, last.likelihood.at, last.likelihood.written, wrong, mend)


def _percent(share: float) -> str:
    return f"{round(100 * share, 6):g} %"
