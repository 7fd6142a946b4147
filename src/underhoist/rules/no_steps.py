"""A procedure without steps.

The steps are the ordered list under the heading `## Steps`. Only they can be ticked on a job card.

Good:

```markdown title="kestrel-3/set-band.md"
## Steps

1. Clean the adjuster's thread.
2. Loosen the locknut.
```

Bad:

```markdown title="kestrel-3/set-band.md"
Clean the adjuster's thread, then loosen the locknut.
```
"""

from collections.abc import Iterator

from underhoist.finding import Finding, Severity
from underhoist.model import Manual
from underhoist.place import Place
from underhoist.prose import prose

CODE = "no-steps"
SEVERITY = Severity.STOP


def check(manual: Manual) -> Iterator[Finding]:
    """Procedures whose body has no ordered list under Steps."""
    drafts = (each for each in manual.drafts if each.kind == "procedure" and each.body.text.strip())
    for procedure in (*manual.procedures.values(), *drafts):
        if not prose(procedure.body).steps:
            at = Place(procedure.file, procedure.body.first_line, 1)
            wrong = "The procedure has no ordered list under a heading Steps."
            yield Finding(
                CODE,
                SEVERITY,
                at,
                "",
                wrong,
                "Write ## Steps and below it 1. and the first action.",
            )
