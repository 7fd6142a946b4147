"""The same key twice.

YAML would quietly keep the second value. Which one is right, only the author knows.

Good:

```yaml title="kestrel-3/count-turns.md"
readings:
  turns-to-seat: {name: Turns to seat, unit: turn, when: as found, limits: 1 to 2 turns}
```

Bad:

```yaml title="kestrel-3/count-turns.md"
readings:
  turns-to-seat: {name: Turns to seat, unit: turn, when: as found, limits: 1 to 2 turns}
  turns-to-seat: {name: Turns to seat, unit: turn, when: as left, limits: 1 to 2 turns}
```
"""

from underhoist.finding import Severity

CODE = "duplicate-key"
SEVERITY = Severity.STOP
