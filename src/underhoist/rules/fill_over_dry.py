"""A service fill larger than the dry fill, or a dipstick that marks more than a service.

At a service, fluid stays behind in the converter and the channels. A service takes less than the
empty unit does; where it says more, the two were swapped or read in different units. From the low
to the full mark it is a part of a service.

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
from underhoist.model import Manual, UnitFamily
from underhoist.rules._pages import Pages

CODE = "fill-over-dry"
SEVERITY = Severity.STOP
PAGES = Pages((UnitFamily,))


def check_page(manual: Manual, family: UnitFamily) -> Iterator[Finding]:
    """Find services that take more than the empty unit, and marks that a service does not fill."""
    service, dry = family.fluid.service_fill, family.fluid.dry_fill
    if service.value > dry.value:
        wrong = f"The service fill is more than the dry fill, {dry.written} on line {dry.at.line}."
        mend = "Look whether the two are swapped or one is in another unit."
        yield Finding(CODE, SEVERITY, service.at, service.written, wrong, mend)
    marks = family.fluid.level.between_marks
    if marks.value >= service.value:
        wrong = (
            f"The marks are further apart than a whole service, {service.written} on line "
            f"{service.at.line}."
        )
        mend = "Look whether the unit is right: between the marks is often half a litre."
        yield Finding(CODE, SEVERITY, marks.at, marks.written, wrong, mend)
