"""Something set, tightened or fitted that nobody looks at a second time.

A wrong setting shows on the road, not on the hoist. A step that tightens, adjusts, locks or backs
off wants a second check: either its torque, which asks for one by itself, or a paragraph
`Second check:` that says what to look at. A procedure that fits parts or leaves a reading behind
has at least one step with a second check.

Good:

```markdown title="kestrel-3/set-band.md"
## Steps

1. [Seat the band](torque:band-seat).
2. Back the screw off 1 1/2 turns.

    Second check: Somebody else counts the turns with you.
```

Bad:

```markdown title="kestrel-3/set-band.md"
## Steps

1. [Seat the band](torque:band-seat).
2. Back the screw off 1 1/2 turns.
```
"""

import re
from collections.abc import Iterator

from underhoist.finding import Finding, Severity
from underhoist.model import Manual, Procedure
from underhoist.place import Place, Placed
from underhoist.prose import prose
from underhoist.rules._actions import Action, actions
from underhoist.rules._pages import Pages
from underhoist.words import quote

CODE = "without-second-check"
SEVERITY = Severity.STOP
PAGES = Pages((Procedure,))

_SETS = re.compile(r"\W*(?:tighten|torque|adjust|lock)\b|\W*back\b[^.:]{0,80}?\boff\b", re.I)
"""An action that sets something, by the word it begins with."""
_SEALS = re.compile(r"\W*(?:fit|drive|press|push|renew)\b[^.:]{0,80}?\bseal\b", re.I)
MEND = "Write Second check: below it and what another pair of eyes looks at."


def check_page(manual: Manual, procedure: Procedure) -> Iterator[Finding]:
    """Find steps that set without a second check, and procedures that fit without any."""
    steps = actions(procedure)
    bare = [step for step in steps if _SETS.match(step.text) and not step.has_second_check]
    for step in bare:
        wrong = f"Step {step.number} sets something, and nobody looks a second time."
        yield Finding(CODE, SEVERITY, _at(procedure, step), quote(step.text), wrong, MEND)
    if steps and not bare and not any(step.has_second_check for step in steps):
        yield from _whole(procedure, steps)


def _whole(procedure: Procedure, steps: tuple[Action, ...]) -> Iterator[Finding]:
    """Yield one finding for a procedure that fits or leaves something unseen."""
    mend = "Add Second check: to the step that does it."
    left = [each for each in procedure.readings.values() if each.when.value != "as found"]
    seals = [step for step in steps if _SEALS.match(step.text)]
    if procedure.parts:
        wrong = "The procedure fits a part, and no step has a second check."
        yield _finding(procedure.parts[0], wrong, mend)
    elif left:
        wrong = "The procedure leaves a reading behind, and no step has a second check."
        yield _finding(left[0].name, wrong, mend)
    elif seals:
        wrong = f"Step {seals[0].number} fits a seal, and no step has a second check."
        at = _at(procedure, seals[0])
        yield Finding(CODE, SEVERITY, at, quote(seals[0].text), wrong, mend)


def _at(procedure: Procedure, step: Action) -> Place:
    return prose(procedure.body).place(step.offset, procedure.file)


def _finding(placed: Placed[str], wrong: str, mend: str) -> Finding:
    return Finding(CODE, SEVERITY, placed.at, placed.written, wrong, mend)
