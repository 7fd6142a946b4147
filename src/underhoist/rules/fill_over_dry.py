"""A service fill larger than the dry fill.

At a service, fluid stays behind in the converter and the channels. A service takes less than the
empty unit does; where it says more, the two were swapped or read in different units.

Good:

```yaml title="families/kestrel-3.md"
fluid:
  specification: DX-2
  service_fill: 4.2 L
  dry_fill: 8.6 L
  level: {selector: neutral, temperature: 65 to 80 degC, between_marks: 0.5 L}
```

Bad:

```yaml title="families/kestrel-3.md"
fluid:
  specification: DX-2
  service_fill: 8.6 L
  dry_fill: 4.2 L
  level: {selector: neutral, temperature: 65 to 80 degC, between_marks: 0.5 L}
```
"""

from collections.abc import Iterator

from underhoist.finding import Finding, Severity
from underhoist.model import Manual

CODE = "fill-over-dry"
SEVERITY = Severity.STOP


def check(manual: Manual) -> Iterator[Finding]:
    """Find unit families whose service takes more than the empty unit."""
    for family in manual.families.values():
        service, dry = family.fluid.service_fill, family.fluid.dry_fill
        if service.value > dry.value:
            wrong = (
                f"The service fill is more than the dry fill, {dry.written} on line {dry.at.line}."
            )
            mend = "Look whether the two are swapped or one is in another unit."
            yield Finding(CODE, SEVERITY, service.at, service.written, wrong, mend)
