"""A torque that stretches its own screw.

A dry screw of its stated `grade`, or of the strongest usual one, takes K·F·d, with K = 0.20 and F
its proof load (SAE J429, ISO 898-1). More than that cannot be meant: most likely the number was
written for inches and the unit for feet, which is twelve times too much. The rule only judges.

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

from underhoist_calculators.fastener import Screw, judge, meant
from underhoist_calculators.units import show, unit_name

from underhoist.finding import Finding, Severity
from underhoist.model import Fastener, Manual, Procedure, UnitFamily
from underhoist.rules._pages import Pages
from underhoist.rules._screws import strongest

CODE = "beyond-proof-load"
SEVERITY = Severity.STOP
PAGES = Pages((UnitFamily, Procedure))


def check_page(manual: Manual, page: UnitFamily | Procedure) -> Iterator[Finding]:
    """Find torques beyond the proof load of their screw, as strong as it may be."""
    for fastener in page.fasteners.values():
        if (screw := strongest(fastener)) is not None:
            yield from _beyond(fastener, screw)


def _beyond(fastener: Fastener, screw: Screw) -> Iterator[Finding]:
    torque = fastener.torque
    if judge(torque.value, screw) == "beyond-proof":
        most = show(screw.torques(1.0)[1], unit_name(torque.value), digits=1)
        name = f"{screw.thread.name} screw of {screw.grade.label}"
        wrong = f"A dry {name} is stretched beyond {most}."
        other = meant(torque.value, screw)
        mend = f"Did you mean {show(other)}?" if other else "Look whether the unit is right."
        yield Finding(CODE, SEVERITY, torque.at, torque.written, wrong, mend)
