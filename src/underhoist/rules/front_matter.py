"""Front matter that is missing, empty, too large or not YAML.

Every page begins with a line of three dashes, its keys and values, and three dashes again. The
keys are YAML: a key, a colon, a space and a value. A value that holds a colon and a space itself
goes in quotes. Front matter is at most 100 kB and 12 levels deep.

Good:

```yaml title="kestrel-3/set-band.md"
title: "Set the band: front"
```

Bad:

```yaml title="kestrel-3/set-band.md"
title: Set the band: front
```
"""

from underhoist.finding import Severity

CODE = "front-matter"
SEVERITY = Severity.STOP
