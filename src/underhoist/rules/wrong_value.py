"""A value of the wrong form.

Minutes are a whole number, `who` is apprentice or senior, an id is lower-case letters, digits and
hyphens, a number has a point and no comma. A key without a value is filled in or taken out.

Good:

```yaml title="kestrel-3/set-band.md"
who: apprentice
minutes: 25
```

Bad:

```yaml title="kestrel-3/set-band.md"
who: anyone
minutes: about 25
```
"""

from underhoist.finding import Severity

CODE = "wrong-value"
SEVERITY = Severity.STOP
