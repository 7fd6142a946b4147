"""An access that no page declares.

The order of the checks counts the minutes to get at things once, so every page must mean the same
by its words. The words are declared under `access` on one plain page. Where no page declares any,
nothing is said: getting there then costs nothing.

Good:

```yaml title="index.md"
access:
  on the hoist: {minutes: 15}
  pan off: {minutes: 50, through: on the hoist}
```

Bad:

```yaml title="index.md"
access:
  on a hoist: {minutes: 15}
  pan off: {minutes: 50, through: on a hoist}
```

Bad, a way that leads through itself:

```yaml title="index.md"
access:
  on the hoist: {minutes: 15, through: pan off}
  pan off: {minutes: 50, through: on the hoist}
```
"""

from collections.abc import Iterator, Mapping

from underhoist.finding import Finding, Severity
from underhoist.model import Access, Manual
from underhoist.place import Placed
from underhoist.rules._edits import retyped
from underhoist.words import listing, meant, quote, sure

CODE = "access-undeclared"
SEVERITY = Severity.STOP


def check(manual: Manual) -> Iterator[Finding]:
    """Find words for an access that are not declared, declared twice or lead round."""
    declared = manual.access
    if not declared:
        return
    yield from _twice(manual)
    for name, access in declared.items():
        if access.through is not None:
            yield from _unknown(declared, access.through)
            if _leads_to(declared, access.through.value, name):
                wrong = f"The way to {name} leads through itself."
                mend = "Name the access that comes before it, nearer to the seat."
                yield Finding(
                    CODE, SEVERITY, access.through.at, quote(access.through.written), wrong, mend
                )
    for fault in manual.faults.values():
        for each in fault.checks.values():
            yield from _unknown(declared, each.access)


def _unknown(declared: Mapping[str, Access], access: Placed[str]) -> Iterator[Finding]:
    if access.value in declared:
        return
    wrong = f"No page declares the access {quote(access.value)}."
    mend = meant(access.value, declared, f"Declared are {listing(declared)}.")
    near = sure(access.value, declared)
    edit = retyped(access, near) if near else None
    yield Finding(CODE, SEVERITY, access.at, quote(access.written), wrong, mend, edit)


def _twice(manual: Manual) -> Iterator[Finding]:
    first: dict[str, str] = {}
    for page in manual.plain.values():
        for name, access in page.access.items():
            if first.setdefault(name, page.file) != page.file:
                wrong = f"{first[name]} declares {quote(name)} already."
                mend = "Keep one of the two."
                at = access.minutes.at
                yield Finding(CODE, SEVERITY, at, access.minutes.written, wrong, mend)


def _leads_to(declared: Mapping[str, Access], start: str, goal: str) -> bool:
    """Say whether the way from one access comes by the other."""
    seen: set[str] = set()
    while start in declared and start not in seen and start != goal:
        seen.add(start)
        through = declared[start].through
        start = through.value if through else ""
    return start == goal
