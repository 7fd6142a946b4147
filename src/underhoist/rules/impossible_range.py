"""A value that cannot be.

The low end of a range above its high end, a torque of zero, less than a minute of work, a
likelihood above 100 %.

Good:

```yaml title="kestrel-3/count-turns.md"
readings:
  turns-to-seat: {name: Turns to seat, unit: turn, when: as found, limits: 1 to 2 turns}
```

Bad:

```yaml title="kestrel-3/count-turns.md"
readings:
  turns-to-seat: {name: Turns to seat, unit: turn, when: as found, limits: 2 to 1 turns}
```
"""

from underhoist.finding import Severity

CODE = "impossible-range"
SEVERITY = Severity.STOP
