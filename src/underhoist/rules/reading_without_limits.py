"""A reading that says nothing about what is good.

Whoever takes a reading must know whether to worry. Where no limits can be stated, as for the
odometer, the finding may stay: it does not stop the build.

Good:

```yaml title="kestrel-3/count-turns.md"
readings:
  turns-to-seat: {name: Turns to seat, unit: turn, when: as found, limits: 1 to 2 turns}
```

Bad:

```yaml title="kestrel-3/count-turns.md"
readings:
  turns-to-seat: {name: Turns to seat, unit: turn, when: as found}
```
"""

from collections.abc import Iterator

from underhoist_calculators.units import unit_words

from underhoist.finding import Finding, Severity
from underhoist.model import Manual, Procedure
from underhoist.rules._pages import Pages

CODE = "reading-without-limits"
SEVERITY = Severity.LOOK
PAGES = Pages((Procedure,))


def check_page(manual: Manual, procedure: Procedure) -> Iterator[Finding]:
    """Find readings without limits."""
    for name, reading in procedure.readings.items():
        if reading.limits is None:
            wrong = f"The reading {name} has no limits."
            words = unit_words(reading.unit.value)
            mend = f"Add limits: the lowest and the highest good value in {words}."
            yield Finding(CODE, SEVERITY, reading.name.at, reading.name.written, wrong, mend)
