"""An anchor, an alias or a tag in the front matter.

YAML can name a value with `&` and repeat it with `*`, and change a value's type with `!`. Here
every value stands where it is read: a person must be able to follow the page, and a chain of
repeats can grow without end. A value that truly begins with one of these signs goes in quotes.

Good:

```yaml title="kestrel-3/set-band.md"
consumables: ["*lint-free* rags"]
```

Bad:

```yaml title="kestrel-3/set-band.md"
consumables: &usual [Lint-free rags]
```
"""

from underhoist.finding import Severity

CODE = "yaml-alias"
SEVERITY = Severity.STOP
