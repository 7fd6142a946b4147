"""A unit that means two things.

A quart is 0.95 litres in one country and 1.14 litres in another: over a whole fill that is more
than the distance between the dipstick's marks. Say which: qt US or qt imperial.

Good:

```yaml title="families/kestrel-3.md"
fluid:
  specification: DX-2
  service_fill: 4.4 qt US
  dry_fill: 9.1 qt US
  level: {selector: neutral, temperature: 65 to 80 degC, between_marks: 0.5 L}
```

Bad:

```yaml title="families/kestrel-3.md"
fluid:
  specification: DX-2
  service_fill: 4.4 quarts
  dry_fill: 9.1 qt US
  level: {selector: neutral, temperature: 65 to 80 degC, between_marks: 0.5 L}
```
"""

from underhoist.finding import Severity

CODE = "unit-ambiguous"
SEVERITY = Severity.STOP
