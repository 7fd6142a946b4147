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
from underhoist.model import Access, Fault, Manual, PlainPage
from underhoist.place import Placed
from underhoist.rules._edits import retyped
from underhoist.rules._pages import Pages
from underhoist.words import listing, meant, quote, sure

CODE = "access-undeclared"
SEVERITY = Severity.STOP
PAGES = Pages((PlainPage, Fault))


def check_page(manual: Manual, page: PlainPage | Fault) -> Iterator[Finding]:
    """Find words for an access that are not declared, declared twice or lead round."""
    if isinstance(page, PlainPage):
        for name, access in page.access.items():
            yield from _declared(manual.access, page.file, name, access)
        return
    declared = manual.access
    for each in page.checks.values() if declared else ():
        yield from _unknown(declared, each.access)


def _declared(
    declared: Mapping[str, Access], file: str, name: str, access: Access
) -> Iterator[Finding]:
    """Look at a declaration; of two of one word only the first is looked into."""
    first, through = declared[name].minutes.at.file, access.through
    if first != file:
        wrong = f"{first} declares {quote(name)} already."
        mend = "Keep one of the two."
        minutes = access.minutes
        yield Finding(CODE, SEVERITY, minutes.at, minutes.written, wrong, mend)
    elif through is not None:
        yield from _unknown(declared, through)
        if _leads_to(declared, through.value, name):
            wrong = f"The way to {name} leads through itself."
            mend = "Name the access that comes before it, nearer to the seat."
            yield Finding(CODE, SEVERITY, through.at, quote(through.written), wrong, mend)


def _unknown(declared: Mapping[str, Access], access: Placed[str]) -> Iterator[Finding]:
    if access.value in declared:
        return
    wrong = f"No page declares the access {quote(access.value)}."
    mend = meant(access.value, declared, f"Declared are {listing(declared)}.")
    near = sure(access.value, declared)
    edit = retyped(access, near) if near else None
    yield Finding(CODE, SEVERITY, access.at, quote(access.written), wrong, mend, edit)


def _leads_to(declared: Mapping[str, Access], start: str, goal: str) -> bool:
    """Say whether the way from one access comes by the other."""
    seen: set[str] = set()
    while start in declared and start not in seen and start != goal:
        seen.add(start)
        through = declared[start].through
        start = through.value if through else ""
    return start == goal
