"""Procedures that wait for each other.

`before` lists the procedures that come first, `after` those that follow, and what `ends` another
comes after it. If the chain comes back to where it began, nobody can start.

Good:

```yaml title="kestrel-3/set-band.md"
before: [raise-vehicle]
after: [leak-check]
```

Bad:

```yaml title="kestrel-3/set-band.md"
before: [leak-check]
after: [leak-check]
```
"""

from collections.abc import Iterator
from graphlib import CycleError, TopologicalSorter
from itertools import pairwise

from underhoist.finding import Finding, Severity
from underhoist.model import Manual
from underhoist.place import Placed

CODE = "before-after-cycle"
SEVERITY = Severity.STOP

type Waits = dict[str, dict[str, Placed[str]]]
"""For each procedure those that must be done first, and the id that says so."""


def check(manual: Manual) -> Iterator[Finding]:
    """Every circle of procedures, once, with the way round."""
    waits = _waits(manual)
    while (circle := _circle(waits)) is not None:
        links = [(later, first) for first, later in pairwise(circle)]
        said = [waits[later][first] for later, first in links]
        place = min(said, key=lambda placed: (placed.at.file, placed.at.line))
        way = " → ".join(_from_smallest(circle))
        wrong = f"The procedures wait for each other: {way}."
        mend = "Take one of them out of before, after or ends."
        yield Finding(CODE, SEVERITY, place.at, place.written, wrong, mend)
        for later, first in links:
            waits[later].pop(first, None)


def _waits(manual: Manual) -> Waits:
    waits: Waits = {name: {} for name in manual.procedures}
    for procedure in manual.procedures.values():
        for first in (*procedure.before, *procedure.ends):
            waits[procedure.id].setdefault(first.value, first)
        for later in procedure.after:
            waits.setdefault(later.value, {}).setdefault(procedure.id, later)
    return waits


def _circle(waits: Waits) -> list[str] | None:
    """Find a circle, in the order of the work, its first procedure again at the end."""
    try:
        TopologicalSorter(waits).prepare()
    except CycleError as error:
        return list(error.args[1])
    return None


def _from_smallest(circle: list[str]) -> list[str]:
    """Begin the circle at its first name by the alphabet, so that it reads the same every time."""
    round_trip = circle[:-1]
    start = round_trip.index(min(round_trip))
    return [*round_trip[start:], *round_trip[:start], round_trip[start]]
