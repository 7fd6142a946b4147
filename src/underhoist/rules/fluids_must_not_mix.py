"""Two fluids that must not mix.

A unit family says under `never_with` which fluids must not come together with its own: they attack
the seals or take the grip from the linings, and what was mixed cannot be parted again. A procedure
for that family does not use them, nor does one for any unit name both side by side.

Good:

```yaml title="families/kestrel-3.md"
fluid:
  specification: DX-2
  accepts: [DX-3]
  never_with: [FM-5]
  service_fill: 4.2 L
  dry_fill: 8.6 L
  level: {selector: neutral, temperature: 65 to 80 degC, between_marks: 0.5 L}
```

Bad:

```yaml title="families/kestrel-3.md"
fluid:
  specification: DX-2
  accepts: [DX-3]
  never_with: [FM-5]
  service_fill: 4.2 L
  dry_fill: 8.6 L
  level: {selector: neutral, temperature: 65 to 80 degC, between_marks: 0.5 L}
```

```yaml title="kestrel-3/set-band.md"
fluids: [DX-2, FM-5]
```
"""

import re
from collections.abc import Iterator

from underhoist.finding import Finding, Severity
from underhoist.model import Manual, Procedure, UnitFamily
from underhoist.place import Placed
from underhoist.references import families_of
from underhoist.rules._pages import Pages

CODE = "fluids-must-not-mix"
SEVERITY = Severity.STOP
PAGES = Pages((UnitFamily, Procedure))


def check_page(manual: Manual, page: UnitFamily | Procedure) -> Iterator[Finding]:
    """Find families that accept what they refuse, and procedures that bring both together."""
    if isinstance(page, UnitFamily):
        yield from _contradiction(page)
    elif page.fluids or page.consumables:
        yield from _procedure(manual, page)


def _contradiction(family: UnitFamily) -> Iterator[Finding]:
    own = (family.fluid.specification, *family.fluid.accepts)
    for never in family.fluid.never_with:
        for fluid in own:
            if fluid.value.casefold() == never.value.casefold():
                wrong = f"{family.title} takes {fluid} on line {fluid.at.line}."
                mend = "Take it out of one of the two."
                yield Finding(CODE, SEVERITY, never.at, never.written, wrong, mend)


def _procedure(manual: Manual, procedure: Procedure) -> Iterator[Finding]:
    """Yield what its families refuse; for any unit, what one of its other fluids refuses."""
    own = families_of(manual, procedure)
    used = {fluid.value.casefold() for fluid in procedure.fluids}
    for family in own or manual.families.values():
        takes = (family.fluid.specification, *family.fluid.accepts)
        if own or any(each.value.casefold() in used for each in takes):
            for fluid in _refused(procedure, family):
                wrong = f"{fluid} must not mix with {family.fluid.specification} of {family.title}."
                mend = "Take it out, or give its work a procedure of its own."
                yield Finding(CODE, SEVERITY, fluid.at, fluid.written, wrong, mend)


def _refused(procedure: Procedure, family: UnitFamily) -> Iterator[Placed[str]]:
    """Yield fluids, and consumables that name one, which the family must never meet."""
    if not family.fluid.never_with:
        return
    names = "|".join(re.escape(never.value) for never in family.fluid.never_with)
    refused = re.compile(rf"(?<!\w)(?:{names})(?!\w)", re.IGNORECASE)
    yield from (each for each in procedure.fluids if refused.fullmatch(each.value))
    yield from (each for each in procedure.consumables if refused.search(each.value))
