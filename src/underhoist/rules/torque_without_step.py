"""A declared torque that no step tightens.

The step that refers to a torque shows its plate, and on the job card it asks for a second check. A
torque that is only declared is read by nobody at the moment when it counts.

Good:

```markdown title="kestrel-3/set-band.md"
## Steps

1. Seat the adjuster: <torque:band-seat>.
```

Bad:

```markdown title="kestrel-3/set-band.md"
## Steps

1. Turn the adjuster in by hand.

    Second check: The mark stands at the top.
```
"""

from collections.abc import Iterator

from underhoist.finding import Finding, Severity
from underhoist.model import Manual, Procedure
from underhoist.rules._actions import actions
from underhoist.rules._pages import Pages

CODE = "torque-without-step"
SEVERITY = Severity.STOP
PAGES = Pages((Procedure,))


def check_page(manual: Manual, procedure: Procedure) -> Iterator[Finding]:
    """Find torques of a procedure that none of its steps refers to."""
    steps = actions(procedure) if procedure.torques else ()
    named = {name for step in steps for name in step.torques}
    declared = {each.value.rpartition("/")[2]: each for each in procedure.torques}
    if not steps or not named <= declared.keys():  # another rule says what is meant there
        return
    for name, torque in declared.items():
        if name not in named:
            wrong = f"No step tightens {torque}."
            mend = f"Write <torque:{torque}> in the step that does, or take it out of torques."
            yield Finding(CODE, SEVERITY, torque.at, torque.written, wrong, mend)
