"""A reading that no step takes.

A reading is asked for on the job card at the step that refers to it. Without such a step it is
never asked for.

Good:

```yaml title="kestrel-3/count-turns.md"
readings:
  turns-to-seat: {name: Turns to seat, unit: turn, when: as found, limits: 1 to 2 turns}
```

```markdown title="kestrel-3/count-turns.md"
## Steps

1. Seat the adjuster by hand and count: <reading:turns-to-seat>.
```

Bad:

```yaml title="kestrel-3/count-turns.md"
readings:
  turns-to-seat: {name: Turns to seat, unit: turn, when: as found, limits: 1 to 2 turns}
```

```markdown title="kestrel-3/count-turns.md"
## Steps

1. Seat the adjuster by hand.
```
"""

from collections.abc import Iterator

from underhoist.finding import Finding, Severity
from underhoist.model import Manual, Procedure
from underhoist.prose import prose
from underhoist.references import find
from underhoist.rules._pages import Pages

CODE = "reading-without-step"
SEVERITY = Severity.STOP
PAGES = Pages((Procedure,))


def check_page(manual: Manual, procedure: Procedure) -> Iterator[Finding]:
    """Find readings of a procedure that none of its steps refers to."""
    steps = prose(procedure.body).steps if procedure.readings else ()
    if not steps:
        return
    taken = {
        reference.id.removeprefix(f"{procedure.id}/")
        for reference in find(procedure.body, procedure.file)
        if reference.scheme == "reading" and steps[0].start <= reference.offset < steps[-1].end
    }
    for name, reading in procedure.readings.items():
        if name not in taken:
            wrong = f"No step takes the reading {name}."
            mend = f"Write <reading:{name}> in the step that takes it."
            yield Finding(CODE, SEVERITY, reading.name.at, reading.name.written, wrong, mend)
