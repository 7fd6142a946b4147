"""One fastener with two torques in one unit family.

A fastener's torque stands once. Where a procedure brings its own fastener of the same id or name
with another value, nobody can tell which one is right, and the unit is put together with the wrong
one half of the time.

Good:

```yaml title="kestrel-3/set-band.md"
fasteners:
  cover-bolts: {name: Cover bolts, torque: 9 lbf*ft}
```

Bad:

```yaml title="kestrel-3/set-band.md"
fasteners:
  band-seat: {name: Band adjuster seat, torque: 100 lbf*in}
```
"""

from collections.abc import Iterator

from attrs import frozen

from underhoist.finding import Finding, Severity
from underhoist.model import Fastener, Manual, UnitFamily

CODE = "two-values"
SEVERITY = Severity.STOP

ALIKE = 0.01
"""Share by which two values may differ: conversion between units rounds that much."""

TWELVE = (11, 13)
"""Ratios that tell of a slip between inches and feet."""


@frozen
class _Stated:
    """A fastener where it is stated."""

    id: str
    fastener: Fastener

    @property
    def torque(self) -> float:
        return self.fastener.torque.value.m_as("newton_metre")

    def is_same(self, other: "_Stated") -> bool:
        names = (each.fastener.name.value.casefold() for each in (self, other))
        return self.id == other.id or len(set(names)) == 1


def check(manual: Manual) -> Iterator[Finding]:
    """Fasteners stated twice in a family and its procedures with torques that differ."""
    for family in manual.families.values():
        stated: list[_Stated] = []
        for each in _stated(manual, family):
            first = next((other for other in stated if other.is_same(each)), None)
            if first is None:
                stated.append(each)
            elif abs(first.torque - each.torque) > ALIKE * first.torque:
                yield _finding(first, each, family)


def _stated(manual: Manual, family: UnitFamily) -> Iterator[_Stated]:
    """Yield the family's fasteners, then those of its procedures."""
    for name, fastener in family.fasteners.items():
        yield _Stated(name, fastener)
    for procedure in manual.procedures.values():
        if procedure.fasteners and any(each.value == family.id for each in procedure.unit_family):
            for name, fastener in procedure.fasteners.items():
                yield _Stated(name, fastener)


def _finding(first: _Stated, second: _Stated, family: UnitFamily) -> Finding:
    here, there = second.fastener.torque, first.fastener.torque
    place = f"{there.at.file}:{there.at.line}"
    ratio = max(first.torque, second.torque) / min(first.torque, second.torque)
    wrong = f"{first.id} of {family.title} is {there.written} at {place} already."
    mend = f"Keep one value and refer to it as torque:{first.id}."
    if TWELVE[0] < ratio < TWELVE[1]:
        mend = f"One is twelve times the other, so one unit is probably wrong. {mend}"
    return Finding(CODE, SEVERITY, here.at, here.written, wrong, mend)
