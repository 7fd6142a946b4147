"""A torque that hardly clamps.

A screw holds by being stretched. Where even an oiled screw of the softest usual grade takes less
than a fifth of its proof load, the joint comes loose; most likely the number was written for feet
and the unit for inches. Some joints are kept so low on purpose: `limited_by` says why, such as a
cork gasket or a plastic cover. The fifth is our own limit.

Good:

```yaml title="families/kestrel-3.md"
fasteners:
  band-seat: {name: Band adjuster seat, torque: 120 lbf*in}
  band-locknut: {name: Band locknut, torque: 28 lbf*ft, thread: 1/2-20 UNF}
```

Bad:

```yaml title="families/kestrel-3.md"
fasteners:
  band-seat: {name: Band adjuster seat, torque: 120 lbf*in}
  band-locknut: {name: Band locknut, torque: 28 lbf*in, thread: 1/2-20 UNF}
```
"""

from collections.abc import Iterator

from underhoist_calculators.fastener import Screw, meant
from underhoist_calculators.units import show

from underhoist.finding import Finding, Severity
from underhoist.model import Fastener, Manual, Procedure, UnitFamily
from underhoist.rules._pages import Pages
from underhoist.rules._screws import weakest

CODE = "too-little-clamp"
SEVERITY = Severity.STOP
PAGES = Pages((UnitFamily, Procedure))

LEAST = 0.2
"""Share of the proof load of the softest grade, oiled, below which nobody tightens a steel joint.

No source states one. benchmarks/twelve_fold.py shows what it catches and what comes near it.
"""

KEPT_LOW = "Where it is meant to be so low, say under limited_by what keeps it there."


def check_page(manual: Manual, page: UnitFamily | Procedure) -> Iterator[Finding]:
    """Find torques that load the softest screw of their thread to less than a fifth."""
    for fastener in page.fasteners.values():
        if fastener.limited_by is None and (screw := weakest(fastener)) is not None:
            yield from _loose(fastener, screw)


def _loose(fastener: Fastener, screw: Screw) -> Iterator[Finding]:
    torque = fastener.torque
    most = screw.shares(torque.value)[1]
    if most < LEAST:
        wrong = (
            f"Even oiled, a screw {screw.thread.name} of {screw.grade.label} is loaded to "
            f"{most * 100:.0f} % of its proof load."
        )
        other = meant(torque.value, screw)
        mend = f"Did you mean {show(other)}? {KEPT_LOW}" if other else KEPT_LOW
        yield Finding(CODE, SEVERITY, torque.at, torque.written, wrong, mend)
