"""A torque that stretches its own screw.

A dry screw of the strongest usual grade takes K·F·d, with K = 0.20 and F its proof load (SAE J429,
ISO 898-1). More than that cannot be meant: most likely the number was written for inches and the
unit for feet, which makes it twelve times too much. The rule only judges.

Good:

```yaml title="kestrel-3/set-band.md"
fasteners:
  cover-bolts: {name: Cover bolts, torque: 108 lbf*in, thread: 5/16-18 UNC}
```

Bad:

```yaml title="kestrel-3/set-band.md"
fasteners:
  cover-bolts: {name: Cover bolts, torque: 108 lbf*ft, thread: 5/16-18 UNC}
```
"""

from collections.abc import Iterator
from itertools import chain

from underhoist_calculators.fastener import Screw, judge, meant
from underhoist_calculators.thread import GRADES, Thread, thread_named
from underhoist_calculators.units import show, unit_name

from underhoist.finding import Finding, Severity
from underhoist.model import Fastener, Manual

CODE = "beyond-proof-load"
SEVERITY = Severity.STOP

STRONGEST = {False: "grade 8", True: "12.9"}
"""The strongest grade in use, of inch and of metric screws."""


def check(manual: Manual) -> Iterator[Finding]:
    """Find torques beyond the proof load of the strongest screw of their thread."""
    for page in chain(manual.families.values(), manual.procedures.values()):
        for fastener in page.fasteners.values():
            thread = thread_named(fastener.thread.value) if fastener.thread else None
            if thread is not None:
                yield from _beyond(fastener, thread)


def _beyond(fastener: Fastener, thread: Thread) -> Iterator[Finding]:
    torque = fastener.torque
    grade = next(each for each in GRADES if each.name == STRONGEST[thread.metric])
    screw = Screw(thread=thread, grade=grade)
    if judge(torque.value, screw) == "beyond-proof":
        most = show(screw.torques(1.0)[1], unit_name(torque.value), digits=1)
        wrong = f"A dry {thread.name} screw of {grade.label} is stretched beyond {most}."
        other = meant(torque.value, screw)
        mend = f"Did you mean {show(other)}?" if other else "Look whether the unit is right."
        yield Finding(CODE, SEVERITY, torque.at, torque.written, wrong, mend)
