"""A quantity without its unit.

A bare number is read in the unit the reader is used to. 12 in pound-force feet is 144 in
pound-force inches: enough to strip a thread.

Good:

```yaml title="kestrel-3/set-band.md"
fasteners:
  cover-bolts: {name: Cover bolts, torque: 9 lbf*ft}
```

Bad:

```yaml title="kestrel-3/set-band.md"
fasteners:
  cover-bolts: {name: Cover bolts, torque: 9}
```
"""

from underhoist.finding import Severity

CODE = "unit-missing"
SEVERITY = Severity.STOP
