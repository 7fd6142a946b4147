"""Two pages with one id.

A page's id is its file name. Two procedures of the same file name in different folders cannot be
told apart by a reference.

Good:

```markdown title="kestrel-3/drop-pan.md"
---
kind: procedure
title: Drop the pan
summary: Opens the unit from below.
unit_family: kestrel-3
area: fluid
minutes: 20
who: apprentice
---
## Steps

1. Loosen the pan bolts.
```

Bad:

```markdown title="any-unit/set-band.md"
---
kind: procedure
title: Set any band
summary: Brings a band's clearance back.
unit_family: any
area: bands
minutes: 20
who: apprentice
---
## Steps

1. Read the plate on the unit.
```
"""

from collections.abc import Iterator

from underhoist.finding import Finding, Severity
from underhoist.model import Manual
from underhoist.place import Place
from underhoist.rules._pages import first_of

CODE = "duplicate-id"
SEVERITY = Severity.STOP


def check(manual: Manual) -> Iterator[Finding]:
    """Pages whose id another page of their kind had first."""
    for page in manual.repeated:
        other = first_of(manual, page).file
        wrong = f"{other} has the id {page.id} already."
        mend = "Give one of the two files another name."
        yield Finding(CODE, SEVERITY, Place(page.file, 1, 1), page.id, wrong, mend)
