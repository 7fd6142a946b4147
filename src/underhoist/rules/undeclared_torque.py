"""A step that names a torque the page does not declare.

The torques of a procedure stand in its front matter, so that the wrench can be fetched and the
work be planned before the first step.

Good:

```yaml title="kestrel-3/set-band.md"
torques: [band-seat]
```

```markdown title="kestrel-3/set-band.md"
## Steps

1. Seat the adjuster to <torque:band-seat>.
```

Bad:

```yaml title="kestrel-3/set-band.md"
torques: []
```

```markdown title="kestrel-3/set-band.md"
## Steps

1. Seat the adjuster to <torque:band-seat>.
```
"""

from collections.abc import Iterator

from underhoist.finding import Finding, Severity
from underhoist.model import Manual, Procedure
from underhoist.prose import prose
from underhoist.references import find, resolve
from underhoist.rules._edits import added
from underhoist.rules._pages import Pages

CODE = "undeclared-torque"
SEVERITY = Severity.STOP
PAGES = Pages((Procedure,))


def check_page(manual: Manual, procedure: Procedure) -> Iterator[Finding]:
    """Torques referred to in steps but missing from `torques`."""
    steps = prose(procedure.body).steps
    declared = {each.value.rpartition("/")[2] for each in procedure.torques}
    for reference in find(procedure.body, procedure.file):
        in_steps = steps and steps[0].start <= reference.offset < steps[-1].end
        if reference.scheme != "torque" or not in_steps:
            continue
        name = reference.id.rpartition("/")[2]
        if name not in declared and resolve(manual, procedure, reference):
            declared.add(name)
            wrong = f"A step names the torque {name}, and the page does not declare it."
            mend = f"Add {reference.id} to torques."
            edit = added(procedure.torques, reference.id, "torques")
            yield Finding(CODE, SEVERITY, reference.at, reference.id, wrong, mend, edit)
