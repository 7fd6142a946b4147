"""A caution that comes after the action it is for.

A step's own caution stands first in the step, before the action. Read afterwards it is too late.

Good:

```markdown title="kestrel-3/set-band.md"
## Steps

1. <hazard:hot-fluid>

    Loosen the adjuster's locknut.
```

Bad:

```markdown title="kestrel-3/set-band.md"
## Steps

1. Loosen the adjuster's locknut.

    <hazard:hot-fluid>
```
"""

import re
from collections.abc import Iterator

from underhoist.finding import Finding, Severity
from underhoist.model import Manual
from underhoist.prose import prose

CODE = "caution-after-step"
SEVERITY = Severity.STOP

_CAUTION = re.compile(r"<hazard:[^\s<>]+>|\[[^\]\n]*\]\(hazard:[^\s()]+\)")


def check(manual: Manual) -> Iterator[Finding]:
    """Paragraphs that are only a caution and stand below a step's action."""
    for procedure in manual.procedures.values():
        text = prose(procedure.body)
        for step in text.steps if "hazard:" in text.text else ():
            begun = False
            for offset, paragraph in step.paragraphs():
                if not _CAUTION.fullmatch(paragraph):
                    begun = True
                elif begun:
                    at = text.place(offset, procedure.file)
                    wrong = f"The caution stands below the action of step {step.number}."
                    yield Finding(CODE, SEVERITY, at, paragraph, wrong, "Put it first in the step.")
