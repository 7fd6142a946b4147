"""A unit of the wrong kind.

A torque has a force and a length: lb alone is a mass, and whoever reads it must guess whether
inches or feet were meant. The limits of a reading have the kind of the unit it is read in.

Good:

```yaml title="kestrel-3/count-turns.md"
readings:
  turns-to-seat: {name: Turns to seat, unit: turn, when: as found, limits: 1 to 2 turns}
```

Bad:

```yaml title="kestrel-3/count-turns.md"
readings:
  turns-to-seat: {name: Turns to seat, unit: turn, when: as found, limits: 1 to 2 mm}
```
"""

from collections.abc import Iterator

from underhoist_calculators.units import KIND_WORDS, kind_of, unit_named

from underhoist.finding import Finding, Severity
from underhoist.model import Manual, Procedure, Reading
from underhoist.rules._pages import Pages

CODE = "unit-wrong-kind"
SEVERITY = Severity.STOP
PAGES = Pages((Procedure,))

ONE_THING = {"angle": "turns"}
"""Kinds that measure the same: half a turn is 180 degrees."""


def check_page(manual: Manual, procedure: Procedure) -> Iterator[Finding]:
    """Limits that are not of the kind of the reading's unit."""
    for reading in procedure.readings.values():
        yield from _limits(reading)


def _limits(reading: Reading) -> Iterator[Finding]:
    unit = unit_named(reading.unit.value)
    limits = reading.limits
    if unit is None or limits is None:
        return
    found = kind_of(limits.value.low)
    if ONE_THING.get(found, found) != ONE_THING.get(unit.kind, unit.kind):
        kind = KIND_WORDS[unit.kind]
        wrong = f"The limits are {KIND_WORDS[found]}; the unit {unit.symbol} is that of {kind}."
        yield Finding(
            CODE, SEVERITY, limits.at, limits.written, wrong, "Write the limits and the unit alike."
        )
