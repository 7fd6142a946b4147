"""A unit that is not known here.

Only the trade's units are known, each by its usual spellings, so that a slip of the keyboard is
found and never taken for another unit.

Good:

```yaml title="kestrel-3/set-band.md"
fasteners:
  cover-bolts: {name: Cover bolts, torque: 12 N*m}
```

Bad:

```yaml title="kestrel-3/set-band.md"
fasteners:
  cover-bolts: {name: Cover bolts, torque: 12 Newts}
```
"""

from underhoist.finding import Severity

CODE = "unit-unknown"
SEVERITY = Severity.STOP
