"""A key that this kind of page does not have.

A misspelt key would be left out without a word, and with it a caution or a torque. So every key
must be one that the kind of page knows. The same goes for the kind itself.

Good:

```yaml title="kestrel-3/set-band.md"
minutes: 25
```

Bad:

```yaml title="kestrel-3/set-band.md"
minuets: 25
```
"""

from underhoist.finding import Severity

CODE = "unknown-key"
SEVERITY = Severity.STOP
